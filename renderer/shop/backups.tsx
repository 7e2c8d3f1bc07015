import { useQuery } from '@tanstack/react-query'
import { answer, api } from '../api.ts'
import { bridge } from '../bridge.ts'
import { ActButton, useAct } from '../parts/act.tsx'
import { Figure, Instant } from '../parts/figures.tsx'
import { Ledger } from '../parts/ledger.tsx'
import { Opened } from '../parts/opened.tsx'
import { Facts } from '../parts/page.tsx'
import { Reserved } from '../parts/reserved.tsx'
import { RestoreCopies } from '../restore/copies.tsx'
import { useShop } from '../shop.tsx'
import { BackupSettings } from './backup-settings.tsx'

/** Where the ledger is, when it was last backed up, and a backup now. */
export function Backups() {
  const { words, formats } = useShop()
  const { backups: said } = words.shop
  const { data } = useQuery({ queryKey: ['backups'], queryFn: () => answer(api.pages.backups.$get()) })
  const act = useAct((json: Record<string, never>) => answer(api.backup.$post({ json })), {
    said: ({ file }) => said.done(file),
  })
  if (!data) return null
  const last = data.rows[0]
  return (
    <>
      <p className="shop-intro">{said.intro}</p>
      <Facts
        facts={[
          [said.ledger, <code key="ledger">{data.ledger}</code>],
          [said.folder, <code key="folder">{data.folder}</code>],
          [said.last, last ? <Instant key="last" at={last.at} /> : said.never],
        ]}
      />
      <div className="buttons">
        <ActButton act={act} input={{}}>
          {said.backUp}
        </ActButton>
        {bridge && (
          <button type="button" className="second" onClick={() => bridge?.openLedgerFolder()}>
            {said.openFolder}
          </button>
        )}
      </div>
      <p className="quiet">{said.elsewhere}</p>
      <Ledger
        plain
        caption={said.list}
        groups={[{ title: '', rows: data.rows }]}
        rowKey={backup => backup.file}
        empty={said.empty}
        columns={[
          { label: said.at, kind: 'text', cell: backup => <Instant at={backup.at} /> },
          { label: said.file, kind: 'entry', cell: backup => backup.file },
          { label: said.size, kind: 'figure', cell: backup => <Figure value={backup.kilobytes} /> },
        ]}
      />
      <Reserved act="shop.changeSettings">
        <BackupSettings />
      </Reserved>
      <Reserved act="restore.bringBack">
        <Opened label={said.restore}>
          {close => <RestoreCopies shown={formats.instant} close={close} />}
        </Opened>
      </Reserved>
    </>
  )
}
