import { build, needsBuild } from '../../electron/commands/start/build.ts'

/** Before any browser test: the pages and programs are built from the sources as they stand. */
export default async function buildFirst(): Promise<void> {
  if (needsBuild() && !(await build())) throw new Error('the application could not be built')
}
