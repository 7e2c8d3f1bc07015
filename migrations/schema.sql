CREATE INDEX as_found_of ON as_found (repair_id, at);

CREATE INDEX belongings_of ON belongings (repair_id);

CREATE UNIQUE INDEX cautions_seen_of ON cautions_seen (repair_id, caution, ifnull(person_id, 0));

CREATE UNIQUE INDEX clock_owners_now ON clock_owners (clock_id) WHERE until_at IS NULL;

CREATE INDEX clock_owners_of ON clock_owners (owner_id, clock_id);

CREATE INDEX condition_notes_of ON condition_notes (repair_id);

CREATE INDEX condition_pins_of ON condition_pins (note_id);

CREATE UNIQUE INDEX day_book_by_key ON day_book (key) WHERE key IS NOT NULL;

CREATE INDEX day_book_by_time ON day_book (at);

CREATE INDEX day_book_of ON day_book (subject_kind, subject_id);

CREATE INDEX day_book_redacted ON day_book (id) WHERE input IS NULL;

CREATE INDEX document_taxes_of ON document_taxes (document_id);

CREATE INDEX documents_billed ON documents (issued_on, total_minor, tax_minor) WHERE kind IN ('invoice', 'credit-note');

CREATE INDEX documents_by_day ON documents (issued_on, kind);

CREATE UNIQUE INDEX documents_by_number ON documents (kind, number);

CREATE INDEX documents_by_sequence ON documents (kind, sequence);

CREATE INDEX documents_corrected ON documents (corrects_id) WHERE corrects_id IS NOT NULL;

CREATE INDEX documents_of_owner ON documents (owner_id, issued_at);

CREATE INDEX documents_of_repair ON documents (repair_id, kind);

CREATE INDEX drafts_of ON drafts (page, changed_at);

CREATE INDEX drawer_counts_by_day ON drawer_counts (on_date);

CREATE UNIQUE INDEX estimate_lines_of ON estimate_lines (estimate_id, position);

CREATE UNIQUE INDEX estimates_by_version ON estimates (repair_id, version);

CREATE INDEX estimates_together ON estimates (lead_id) WHERE lead_id IS NOT NULL;

CREATE UNIQUE INDEX find_entries_by_subject ON find_entries (kind, subject_id);

CREATE INDEX findings_of ON findings (repair_id, at);

CREATE INDEX go_aheads_of ON go_aheads (repair_id, at);

CREATE INDEX go_aheads_on ON go_aheads (estimate_id);

CREATE INDEX hand_overs_by_time ON hand_overs (at);

CREATE INDEX handed_papers_of ON handed_papers (kind, of_id);

CREATE INDEX labour_entries_of ON labour_entries (repair_id, started_at);

CREATE INDEX labour_entries_of_person ON labour_entries (person_id, started_at);

CREATE UNIQUE INDEX labour_entries_running ON labour_entries (ifnull(person_id, 0))
  WHERE ended_at IS NULL AND struck_reason IS NULL;

CREATE INDEX messages_of ON messages (repair_id, at);

CREATE INDEX outside_work_away ON outside_work (due_on) WHERE back_at IS NULL;

CREATE INDEX outside_work_of ON outside_work (repair_id);

CREATE INDEX owner_contacts_by_value ON owner_contacts (value);

CREATE INDEX owner_contacts_of ON owner_contacts (owner_id);

CREATE INDEX owners_by_name ON owners (name COLLATE NOCASE, id);

CREATE INDEX owners_merged ON owners (merged_into_id) WHERE merged_into_id IS NOT NULL;

CREATE INDEX part_orders_of ON part_orders (part_id);

CREATE INDEX part_orders_of_repair ON part_orders (repair_id) WHERE repair_id IS NOT NULL;

CREATE INDEX part_orders_open ON part_orders (due_on) WHERE arrived_at IS NULL;

CREATE INDEX parts_by_kind ON parts (kind, name COLLATE NOCASE);

CREATE INDEX parts_to_order ON parts (id) WHERE active = 1 AND in_stock <= reorder_at;

CREATE INDEX payments_by_day ON payments (on_date, repair_id, method, amount_minor);

CREATE INDEX payments_of_invoice ON payments (invoice_id);

CREATE INDEX payments_of_owner ON payments (owner_id);

CREATE INDEX payments_of_repair ON payments (repair_id);

CREATE INDEX payments_on_account ON payments (owner_id) WHERE method = 'account' OR repair_id IS NULL;

CREATE UNIQUE INDEX people_by_name ON people (name COLLATE NOCASE);

CREATE INDEX photograph_uses_of ON photograph_uses (repair_id);

CREATE INDEX readings_of ON readings (run_id, at);

CREATE INDEX repairs_comebacks ON repairs (comeback_of_id) WHERE comeback_of_id IS NOT NULL;

CREATE INDEX repairs_in_shop ON repairs (stage, stage_since) WHERE stage <> 'collected';

CREATE INDEX repairs_of_clock ON repairs (clock_id, taken_in_at);

CREATE INDEX repairs_of_owner ON repairs (owner_id, taken_in_at);

CREATE INDEX repairs_owing ON repairs (id) WHERE due_minor <> 0;

CREATE INDEX run_in_dues_of ON run_in_dues (run_id, kind, due_at);

CREATE INDEX run_in_runs_of ON run_in_runs (repair_id, started_at);

CREATE UNIQUE INDEX run_in_runs_open ON run_in_runs (repair_id) WHERE ended_at IS NULL;

CREATE UNIQUE INDEX run_in_runs_place ON run_in_runs (place_id) WHERE ended_at IS NULL AND place_id IS NOT NULL;

CREATE UNIQUE INDEX run_in_stages_of ON run_in_stages (run_id, position);

CREATE INDEX settled_taxes_by_day ON settled_taxes (on_date, code, rate, kind, taxable_minor, tax_minor);

CREATE INDEX settled_taxes_of ON settled_taxes (repair_id, on_date);

CREATE UNIQUE INDEX shelf_places_by_name ON shelf_places (name COLLATE NOCASE);

CREATE UNIQUE INDEX steps_done_of ON steps_done (repair_id, step);

CREATE INDEX stock_moves_of ON stock_moves (part_id, at);

CREATE INDEX stock_moves_on_repair ON stock_moves (repair_id) WHERE repair_id IS NOT NULL;

CREATE UNIQUE INDEX vendors_by_name ON vendors (name COLLATE NOCASE);

CREATE INDEX waits_of ON waits (repair_id, from_at);

CREATE UNIQUE INDEX waits_open ON waits (repair_id, reason) WHERE until_at IS NULL;

CREATE INDEX write_offs_by_day ON write_offs (on_date);

CREATE INDEX write_offs_of_owner ON write_offs (owner_id);

CREATE INDEX write_offs_of_repair ON write_offs (repair_id);

CREATE TABLE applied_migrations (
    number INTEGER PRIMARY KEY, name TEXT NOT NULL, sha256 TEXT NOT NULL, applied_at TEXT NOT NULL
  ) STRICT;

CREATE TABLE as_found (
  id INTEGER PRIMARY KEY,
  repair_id INTEGER NOT NULL REFERENCES repairs (id),
  at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', at) IS at),
  person_id INTEGER REFERENCES people (id),
  mark TEXT NOT NULL CHECK (mark <> ''),
  text TEXT NOT NULL CHECK (trim(text) <> ''),
  struck_reason TEXT CHECK (trim(struck_reason) <> '')
) STRICT;

CREATE TABLE belongings (
  id INTEGER PRIMARY KEY,
  repair_id INTEGER NOT NULL REFERENCES repairs (id),
  item TEXT NOT NULL CHECK (item <> ''),
  position TEXT NOT NULL DEFAULT '',
  description TEXT NOT NULL DEFAULT '',
  count INTEGER NOT NULL CHECK (count BETWEEN 1 AND 99),
  custody TEXT NOT NULL CHECK (custody IN ('received', 'kept', 'absent')),
  tag TEXT NOT NULL DEFAULT '',
  returned_at TEXT CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', returned_at) IS returned_at),
  unreturned_reason TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE cautions_seen (
  id INTEGER PRIMARY KEY,
  repair_id INTEGER NOT NULL REFERENCES repairs (id),
  caution TEXT NOT NULL CHECK (caution <> ''),
  at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', at) IS at),
  person_id INTEGER REFERENCES people (id)
) STRICT;

CREATE TABLE clock_checks (
  id INTEGER PRIMARY KEY,
  at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', at) IS at),
  person_id INTEGER REFERENCES people (id),
  error_ms INTEGER NOT NULL,
  reference TEXT NOT NULL CHECK (trim(reference) <> '')
) STRICT;

CREATE TABLE clock_owners (
  id INTEGER PRIMARY KEY,
  clock_id INTEGER NOT NULL REFERENCES clocks (id),
  owner_id INTEGER NOT NULL REFERENCES owners (id),
  from_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', from_at) IS from_at),
  until_at TEXT CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', until_at) IS until_at AND until_at >= from_at)
) STRICT;

CREATE TABLE clocks (
  id INTEGER PRIMARY KEY,
  form TEXT NOT NULL CHECK (form <> ''),
  maker TEXT NOT NULL DEFAULT '',
  serial TEXT NOT NULL DEFAULT '',
  marks TEXT NOT NULL DEFAULT '',
  -- null, or 'unknown' in the codes below: nobody has looked yet
  trains INTEGER CHECK (trains BETWEEN 1 AND 3),
  power TEXT NOT NULL DEFAULT 'unknown',
  duration TEXT NOT NULL DEFAULT 'unknown',
  escapement TEXT NOT NULL DEFAULT 'unknown',
  strike TEXT NOT NULL DEFAULT 'unknown',
  chime TEXT NOT NULL DEFAULT 'unknown',
  chime_corrects INTEGER NOT NULL DEFAULT 0 CHECK (chime_corrects IN (0, 1)),
  dial TEXT NOT NULL DEFAULT 'unknown',
  jewelled INTEGER NOT NULL DEFAULT 0 CHECK (jewelled IN (0, 1)),
  luminous INTEGER NOT NULL DEFAULT 0 CHECK (luminous IN (0, 1)),
  mercury INTEGER NOT NULL DEFAULT 0 CHECK (mercury IN (0, 1)),
  mains INTEGER NOT NULL DEFAULT 0 CHECK (mains IN (0, 1)),
  notes TEXT NOT NULL DEFAULT ''
, height_mm INTEGER CHECK (height_mm > 0), width_mm INTEGER CHECK (width_mm > 0), depth_mm INTEGER CHECK (depth_mm > 0), weight_g INTEGER CHECK (weight_g > 0), beats TEXT NOT NULL DEFAULT '' CHECK (length(beats) <= 200)) STRICT;

CREATE TABLE closed_periods (
  id INTEGER PRIMARY KEY,
  at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', at) IS at),
  person_id INTEGER REFERENCES people (id),
  to_date TEXT NOT NULL UNIQUE CHECK (date(to_date) IS to_date)
) STRICT;

CREATE TABLE condition_notes (
  id INTEGER PRIMARY KEY,
  repair_id INTEGER NOT NULL REFERENCES repairs (id),
  component TEXT NOT NULL CHECK (component <> ''),
  finish TEXT NOT NULL DEFAULT '',
  grade TEXT NOT NULL CHECK (grade <> ''),
  earlier_repair TEXT NOT NULL DEFAULT '',
  remark TEXT NOT NULL DEFAULT '',
  noted_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', noted_at) IS noted_at),
  struck_reason TEXT CHECK (trim(struck_reason) <> '')
) STRICT;

CREATE TABLE condition_pins (
  id INTEGER PRIMARY KEY,
  note_id INTEGER NOT NULL REFERENCES condition_notes (id),
  view TEXT NOT NULL CHECK (view IN ('front', 'back', 'dial', 'movement')),
  x REAL NOT NULL CHECK (x BETWEEN 0 AND 1),
  y REAL NOT NULL CHECK (y BETWEEN 0 AND 1)
) STRICT;

CREATE TABLE day_book (
  id INTEGER PRIMARY KEY,
  at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', at) IS at),
  person_id INTEGER REFERENCES people (id),
  act TEXT NOT NULL CHECK (act GLOB '?*.?*'),
  -- which shape of the act's input it is
  version INTEGER NOT NULL DEFAULT 1 CHECK (version > 0),
  -- what the sender called this doing of the act, so that it is not done twice
  key TEXT CHECK (length(key) BETWEEN 8 AND 128),
  subject_kind TEXT NOT NULL,
  subject_id INTEGER NOT NULL,
  commitment TEXT NOT NULL CHECK (length(commitment) = 64),
  -- both are there, or both were taken out
  salt TEXT CHECK (length(salt) = 64),
  input TEXT CHECK (json_valid(input)),
  -- what was answered, kept for whoever asks again with the key
  result TEXT CHECK (json_valid(result)),
  previous_hash TEXT NOT NULL CHECK (length(previous_hash) = 64),
  hash TEXT NOT NULL UNIQUE CHECK (length(hash) = 64),
  -- what a row of before this shape was chained by
  former_hash TEXT CHECK (length(former_hash) = 64),
  CHECK ((salt IS NULL) = (input IS NULL)),
  CHECK (result IS NULL OR input IS NOT NULL)
) STRICT;

CREATE TABLE document_taxes (
  id INTEGER PRIMARY KEY,
  document_id INTEGER NOT NULL REFERENCES documents (id),
  code TEXT NOT NULL,
  rate TEXT NOT NULL,
  kind TEXT NOT NULL,
  taxable_minor INTEGER NOT NULL,
  tax_minor INTEGER NOT NULL
) STRICT;

CREATE TABLE documents (
  id INTEGER PRIMARY KEY,
  kind TEXT NOT NULL CHECK (kind IN ('claim-check', 'estimate', 'invoice', 'receipt', 'credit-note', 'warranty')),
  number TEXT NOT NULL,
  sequence INTEGER NOT NULL CHECK (sequence > 0),
  issued_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', issued_at) IS issued_at),
  issued_on TEXT NOT NULL CHECK (date(issued_on) IS issued_on),
  owner_id INTEGER NOT NULL REFERENCES owners (id),
  repair_id INTEGER REFERENCES repairs (id),
  corrects_id INTEGER REFERENCES documents (id),
  currency TEXT NOT NULL CHECK (length(currency) = 3),
  total_minor INTEGER NOT NULL DEFAULT 0,
  tax_minor INTEGER NOT NULL DEFAULT 0,
  contents TEXT NOT NULL CHECK (json_valid(contents)),
  contents_hash TEXT NOT NULL CHECK (length(contents_hash) = 64)
) STRICT;

CREATE TABLE drafts (
  key TEXT PRIMARY KEY CHECK (length(key) BETWEEN 8 AND 64),
  page TEXT NOT NULL,
  title TEXT NOT NULL DEFAULT '',
  body TEXT NOT NULL CHECK (json_valid(body)),
  begun_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', begun_at) IS begun_at),
  changed_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', changed_at) IS changed_at)
) STRICT, WITHOUT ROWID;

CREATE TABLE drawer_counts (
  id INTEGER PRIMARY KEY,
  at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', at) IS at),
  on_date TEXT NOT NULL CHECK (date(on_date) IS on_date),
  person_id INTEGER REFERENCES people (id),
  last_payment_id INTEGER NOT NULL CHECK (last_payment_id >= 0),
  expected_minor INTEGER NOT NULL,
  counted_minor INTEGER NOT NULL CHECK (counted_minor >= 0),
  taken_minor INTEGER NOT NULL DEFAULT 0 CHECK (taken_minor BETWEEN 0 AND counted_minor),
  remark TEXT NOT NULL DEFAULT '',
  CHECK (expected_minor = counted_minor OR trim(remark) <> '')
) STRICT;

CREATE TABLE estimate_lines (
  id INTEGER PRIMARY KEY,
  estimate_id INTEGER NOT NULL REFERENCES estimates (id),
  position INTEGER NOT NULL,
  kind TEXT NOT NULL CHECK (kind <> ''),
  description TEXT NOT NULL CHECK (trim(description) <> ''),
  quantity TEXT NOT NULL,
  unit TEXT NOT NULL,
  taxes TEXT NOT NULL CHECK (json_valid(taxes)),
  working TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(working)),
  net_minor INTEGER NOT NULL,
  part_id INTEGER REFERENCES parts (id),
  outside_work_id INTEGER REFERENCES outside_work (id),
  finding_id INTEGER REFERENCES findings (id),
  -- added to quantity × unit, as for rush work
  charge TEXT NOT NULL DEFAULT '0',
  -- what the line was told to be
  work TEXT CHECK (work <> ''),
  -- what was asked of the price book for it
  priced TEXT CHECK (json_valid(priced))
) STRICT;

CREATE TABLE estimates (
  id INTEGER PRIMARY KEY,
  repair_id INTEGER NOT NULL REFERENCES repairs (id),
  version INTEGER NOT NULL CHECK (version > 0),
  supplement INTEGER NOT NULL DEFAULT 0 CHECK (supplement IN (0, 1)),
  written_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', written_at) IS written_at),
  tax TEXT NOT NULL CHECK (json_valid(tax)),
  high_minor INTEGER CHECK (high_minor >= 0),
  total_minor INTEGER NOT NULL,
  remark TEXT NOT NULL DEFAULT '',
  valid_until TEXT CHECK (date(valid_until) IS valid_until),
  sent_at TEXT CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', sent_at) IS sent_at),
  sent_way TEXT NOT NULL DEFAULT '',
  document_id INTEGER REFERENCES documents (id),
  -- where several repairs stand on one estimate: the one that it is numbered by
  lead_id INTEGER REFERENCES estimates (id) CHECK (lead_id <> id),
  CHECK ((sent_at IS NULL) = (document_id IS NULL))
) STRICT;

CREATE TABLE find_entries (
  id INTEGER PRIMARY KEY,
  kind TEXT NOT NULL CHECK (kind IN ('owner', 'clock', 'repair', 'paper')),
  subject_id INTEGER NOT NULL,
  words TEXT NOT NULL,
  marks TEXT NOT NULL
) STRICT;

CREATE VIRTUAL TABLE find_marks USING fts5 (marks, content = 'find_entries', content_rowid = 'id',
  tokenize = 'trigram');

CREATE TABLE 'find_marks_config'(k PRIMARY KEY, v) WITHOUT ROWID;

CREATE TABLE 'find_marks_data'(id INTEGER PRIMARY KEY, block BLOB);

CREATE TABLE 'find_marks_docsize'(id INTEGER PRIMARY KEY, sz BLOB);

CREATE TABLE 'find_marks_idx'(segid, term, pgno, PRIMARY KEY(segid, term)) WITHOUT ROWID;

CREATE VIRTUAL TABLE find_vocabulary USING fts5vocab (find_words, row);

CREATE VIRTUAL TABLE find_words USING fts5 (words, content = 'find_entries', content_rowid = 'id',
  tokenize = "unicode61 remove_diacritics 2", prefix = '1 2 3');

CREATE TABLE 'find_words_config'(k PRIMARY KEY, v) WITHOUT ROWID;

CREATE TABLE 'find_words_data'(id INTEGER PRIMARY KEY, block BLOB);

CREATE TABLE 'find_words_docsize'(id INTEGER PRIMARY KEY, sz BLOB);

CREATE TABLE 'find_words_idx'(segid, term, pgno, PRIMARY KEY(segid, term)) WITHOUT ROWID;

CREATE TABLE findings (
  id INTEGER PRIMARY KEY,
  repair_id INTEGER NOT NULL REFERENCES repairs (id),
  at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', at) IS at),
  person_id INTEGER REFERENCES people (id),
  component TEXT NOT NULL CHECK (component <> ''),
  text TEXT NOT NULL CHECK (trim(text) <> ''),
  needs_word INTEGER NOT NULL DEFAULT 0 CHECK (needs_word IN (0, 1)),
  struck_reason TEXT CHECK (trim(struck_reason) <> '')
) STRICT;

CREATE TABLE forgetting (id INTEGER PRIMARY KEY REFERENCES owners (id)) STRICT;

CREATE TABLE forgotten_owners (
  -- the owner’s
  id INTEGER PRIMARY KEY REFERENCES owners (id),
  at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', at) IS at),
  person_id INTEGER REFERENCES people (id),
  reason TEXT NOT NULL CHECK (trim(reason) <> '')
) STRICT;

CREATE TABLE go_aheads (
  id INTEGER PRIMARY KEY,
  repair_id INTEGER NOT NULL REFERENCES repairs (id),
  estimate_id INTEGER REFERENCES estimates (id),
  at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', at) IS at),
  person_id INTEGER REFERENCES people (id),
  answer TEXT NOT NULL CHECK (answer IN ('go-ahead', 'declined')),
  who TEXT NOT NULL CHECK (trim(who) <> ''),
  way TEXT NOT NULL CHECK (way <> ''),
  limit_minor INTEGER CHECK (limit_minor >= 0),
  remark TEXT NOT NULL DEFAULT '', limit_named INTEGER NOT NULL DEFAULT 0 CHECK (limit_named IN (0, 1)),
  CHECK ((answer = 'go-ahead') = (limit_minor IS NOT NULL))
) STRICT;

CREATE TABLE hand_overs (
  id INTEGER PRIMARY KEY,
  repair_id INTEGER NOT NULL UNIQUE REFERENCES repairs (id),
  at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', at) IS at),
  person_id INTEGER REFERENCES people (id),
  to_name TEXT NOT NULL CHECK (trim(to_name) <> ''),
  authority TEXT NOT NULL DEFAULT '',
  unpaid_reason TEXT NOT NULL DEFAULT '',
  advice_given INTEGER NOT NULL DEFAULT 1 CHECK (advice_given IN (0, 1))
) STRICT;

CREATE TABLE handed_papers (
  id INTEGER PRIMARY KEY,
  kind TEXT NOT NULL CHECK (kind IN ('condition-report', 'go-ahead', 'run-in-certificate', 'ready-letter', 'hand-over', 'statement', 'uncollected-letter')),
  of_id INTEGER NOT NULL CHECK (of_id > 0),
  owner_id INTEGER NOT NULL REFERENCES owners (id),
  repair_id INTEGER REFERENCES repairs (id),
  handed_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', handed_at) IS handed_at),
  handed_on TEXT NOT NULL CHECK (date(handed_on) IS handed_on),
  person_id INTEGER REFERENCES people (id),
  size TEXT NOT NULL CHECK (size <> ''),
  contents TEXT NOT NULL CHECK (json_valid(contents)),
  contents_hash TEXT NOT NULL CHECK (length(contents_hash) = 64),
  UNIQUE (id, size),
  CHECK ((kind = 'statement') = (repair_id IS NULL))
) STRICT;

CREATE TABLE holidays (
  on_date TEXT PRIMARY KEY CHECK (date(on_date) IS on_date),
  name TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE kept_handed_papers (
  id INTEGER PRIMARY KEY,
  hash TEXT NOT NULL CHECK (length(hash) = 64),
  bytes INTEGER NOT NULL CHECK (bytes > 0),
  size TEXT NOT NULL,
  drawn_by TEXT NOT NULL CHECK (drawn_by <> ''),
  FOREIGN KEY (id, size) REFERENCES handed_papers (id, size)
) STRICT;

CREATE TABLE kept_papers (
  id INTEGER PRIMARY KEY REFERENCES documents (id),
  hash TEXT NOT NULL CHECK (length(hash) = 64),
  bytes INTEGER NOT NULL CHECK (bytes > 0),
  size TEXT NOT NULL CHECK (size <> ''),
  drawn_by TEXT NOT NULL CHECK (drawn_by <> '')
) STRICT;

CREATE TABLE labour_entries (
  id INTEGER PRIMARY KEY,
  repair_id INTEGER NOT NULL REFERENCES repairs (id),
  person_id INTEGER REFERENCES people (id),
  task TEXT NOT NULL CHECK (task <> ''),
  started_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', started_at) IS started_at),
  ended_at TEXT CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', ended_at) IS ended_at AND ended_at >= started_at),
  -- 0 where only the minutes and the day were told: the times then only carry them
  timed INTEGER NOT NULL DEFAULT 1 CHECK (timed IN (0, 1)),
  note TEXT NOT NULL DEFAULT '',
  struck_reason TEXT CHECK (trim(struck_reason) <> '')
) STRICT;

CREATE TABLE ledger_identity (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  -- for good: photographs, papers and backups carry it
  identity TEXT NOT NULL CHECK (length(identity) = 32 AND identity NOT GLOB '*[^0-9a-f]*'),
  -- new at each opening: a log was written under this one, or is another file's
  opening TEXT NOT NULL CHECK (length(opening) = 32 AND opening NOT GLOB '*[^0-9a-f]*')
) STRICT;

CREATE TABLE messages (
  id INTEGER PRIMARY KEY,
  repair_id INTEGER NOT NULL REFERENCES repairs (id),
  at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', at) IS at),
  person_id INTEGER REFERENCES people (id),
  about TEXT NOT NULL CHECK (about <> ''),
  way TEXT NOT NULL CHECK (way <> ''),
  text TEXT NOT NULL CHECK (trim(text) <> '')
) STRICT;

CREATE TABLE outside_work (
  id INTEGER PRIMARY KEY,
  repair_id INTEGER NOT NULL REFERENCES repairs (id),
  vendor_id INTEGER NOT NULL REFERENCES vendors (id),
  description TEXT NOT NULL CHECK (trim(description) <> ''),
  sent_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', sent_at) IS sent_at),
  due_on TEXT CHECK (date(due_on) IS due_on),
  back_at TEXT CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', back_at) IS back_at AND back_at >= sent_at),
  cost_minor INTEGER CHECK (cost_minor >= 0),
  price_minor INTEGER CHECK (price_minor >= 0)
) STRICT;

CREATE TABLE owner_contacts (
  id INTEGER PRIMARY KEY,
  owner_id INTEGER NOT NULL REFERENCES owners (id),
  kind TEXT NOT NULL CHECK (kind IN ('phone', 'e-mail')),
  value TEXT NOT NULL CHECK (trim(value) <> ''),
  preferred INTEGER NOT NULL DEFAULT 0 CHECK (preferred IN (0, 1)),
  struck_reason TEXT CHECK (trim(struck_reason) <> '')
) STRICT;

CREATE TABLE owners (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL CHECK (trim(name) <> ''),
  address TEXT NOT NULL DEFAULT '',
  country TEXT NOT NULL DEFAULT '',
  notes TEXT NOT NULL DEFAULT '',
  merged_into_id INTEGER REFERENCES owners (id) CHECK (merged_into_id <> id),
  since_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', since_at) IS since_at)
) STRICT;

CREATE TABLE part_orders (
  id INTEGER PRIMARY KEY,
  part_id INTEGER NOT NULL REFERENCES parts (id),
  vendor_id INTEGER REFERENCES vendors (id),
  repair_id INTEGER REFERENCES repairs (id),
  quantity INTEGER NOT NULL CHECK (quantity > 0),
  ordered_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', ordered_at) IS ordered_at),
  due_on TEXT CHECK (date(due_on) IS due_on),
  arrived_at TEXT CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', arrived_at) IS arrived_at)
) STRICT;

CREATE TABLE parts (
  id INTEGER PRIMARY KEY,
  kind TEXT NOT NULL CHECK (kind <> ''),
  name TEXT NOT NULL CHECK (trim(name) <> ''),
  sizes TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(sizes)),
  -- how the ends of a mainspring are made; '' for other parts and where it is not known
  ends TEXT NOT NULL DEFAULT '',
  vendor_id INTEGER REFERENCES vendors (id),
  kept_at TEXT NOT NULL DEFAULT '',
  unit_cost_minor INTEGER NOT NULL CHECK (unit_cost_minor >= 0),
  unit_price_minor INTEGER NOT NULL CHECK (unit_price_minor >= 0),
  reorder_at INTEGER NOT NULL DEFAULT 0 CHECK (reorder_at >= 0),
  active INTEGER NOT NULL DEFAULT 1 CHECK (active IN (0, 1)),
  -- the sum of its stock moves, kept by the verb that adds a move; checked against the moves by the tests
  in_stock INTEGER NOT NULL DEFAULT 0 CHECK (in_stock >= 0)
) STRICT;

CREATE TABLE payments (
  id INTEGER PRIMARY KEY,
  at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', at) IS at),
  on_date TEXT NOT NULL CHECK (date(on_date) IS on_date),
  person_id INTEGER REFERENCES people (id),
  owner_id INTEGER NOT NULL REFERENCES owners (id),
  repair_id INTEGER REFERENCES repairs (id),
  invoice_id INTEGER REFERENCES documents (id),
  receipt_id INTEGER REFERENCES documents (id),
  method TEXT NOT NULL CHECK (method <> ''),
  amount_minor INTEGER NOT NULL CHECK (amount_minor <> 0),
  reference TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE people (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL CHECK (trim(name) <> ''),
  active INTEGER NOT NULL DEFAULT 1 CHECK (active IN (0, 1))
, roles TEXT NOT NULL DEFAULT '["owner"]'
  CHECK (json_valid(roles) AND json_type(roles) = 'array' AND json_array_length(roles) BETWEEN 1 AND 3), initials TEXT NOT NULL DEFAULT '' CHECK (length(initials) <= 4), bench_hours TEXT NOT NULL DEFAULT '' CHECK (length(bench_hours) <= 30)) STRICT;

CREATE TABLE photograph_uses (
  id INTEGER PRIMARY KEY,
  hash TEXT NOT NULL REFERENCES photographs (hash),
  repair_id INTEGER NOT NULL REFERENCES repairs (id),
  note_id INTEGER REFERENCES condition_notes (id),
  moment TEXT NOT NULL CHECK (moment IN ('intake', 'as-found', 'bench', 'hand-over')),
  added_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', added_at) IS added_at),
  remark TEXT NOT NULL DEFAULT '',
  struck_reason TEXT CHECK (trim(struck_reason) <> '')
) STRICT;

CREATE TABLE photographs (
  id INTEGER PRIMARY KEY,
  hash TEXT NOT NULL UNIQUE CHECK (length(hash) = 64),
  media_type TEXT NOT NULL CHECK (media_type IN ('image/jpeg', 'image/png')),
  bytes INTEGER NOT NULL CHECK (bytes > 0),
  added_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', added_at) IS added_at)
) STRICT;

CREATE TABLE readings (
  id INTEGER PRIMARY KEY,
  run_id INTEGER NOT NULL REFERENCES run_in_runs (id),
  at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', at) IS at),
  entered_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', entered_at) IS entered_at AND entered_at >= at),
  person_id INTEGER REFERENCES people (id),
  -- milliseconds the clock shows more (+) or less (−) than the true time
  error_ms INTEGER,
  wound INTEGER NOT NULL DEFAULT 0 CHECK (wound IN (0, 1)),
  strike_right INTEGER CHECK (strike_right IN (0, 1)),
  chime_right INTEGER CHECK (chime_right IN (0, 1)),
  in_beat INTEGER CHECK (in_beat IN (0, 1)),
  stopped INTEGER NOT NULL DEFAULT 0 CHECK (stopped IN (0, 1)),
  nut_turns TEXT NOT NULL DEFAULT '',
  temperature_c REAL CHECK (temperature_c BETWEEN -40 AND 60),
  note TEXT NOT NULL DEFAULT '',
  corrects_id INTEGER UNIQUE REFERENCES readings (id),
  -- 1 where it strikes out the one it corrects and says nothing of its own but why
  withdrawn INTEGER NOT NULL DEFAULT 0 CHECK (withdrawn IN (0, 1)), left_ms INTEGER, event TEXT CHECK (event IN ('cased', 'moved', 'oiled', 'adjusted')), hour_shown INTEGER CHECK (hour_shown BETWEEN 1 AND 12), hour_counted INTEGER CHECK (hour_counted BETWEEN 0 AND 100), half_counted INTEGER CHECK (half_counted BETWEEN 0 AND 100), quarter INTEGER CHECK (quarter BETWEEN 1 AND 4), quarter_right INTEGER CHECK (quarter_right IN (0, 1)), twelve_right INTEGER NOT NULL DEFAULT 0 CHECK (twelve_right IN (0, 1)), four_right INTEGER NOT NULL DEFAULT 0 CHECK (four_right IN (0, 1)), self_corrected INTEGER CHECK (self_corrected IN (0, 1)), silent INTEGER CHECK (silent IN (0, 1)), repeats INTEGER CHECK (repeats IN (0, 1)),
  CHECK (withdrawn = 0 OR corrects_id IS NOT NULL)
) STRICT;

CREATE TABLE repairs (
  id INTEGER PRIMARY KEY,
  number INTEGER NOT NULL UNIQUE CHECK (number > 0),
  clock_id INTEGER NOT NULL REFERENCES clocks (id),
  owner_id INTEGER NOT NULL REFERENCES owners (id),
  taken_in_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', taken_in_at) IS taken_in_at),
  taken_in_by INTEGER REFERENCES people (id),
  fault TEXT NOT NULL CHECK (trim(fault) <> ''),
  scope TEXT NOT NULL,
  comeback_of_id INTEGER REFERENCES repairs (id),
  covered INTEGER NOT NULL DEFAULT 0 CHECK (covered IN (0, 1)),
  estimate_only INTEGER NOT NULL DEFAULT 0 CHECK (estimate_only IN (0, 1)),
  springs TEXT NOT NULL DEFAULT 'unknown',
  agreed_words TEXT NOT NULL DEFAULT '',
  estimated_on TEXT CHECK (date(estimated_on) IS estimated_on),
  signed_in_by TEXT NOT NULL DEFAULT '',
  bench_order INTEGER,
  ready_at TEXT CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', ready_at) IS ready_at),
  ready_reason TEXT NOT NULL DEFAULT '',
  told_at TEXT CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', told_at) IS told_at),
  -- what core/standing last derived from the recorded facts; never typed in, checked against the facts by the tests
  stage TEXT NOT NULL DEFAULT 'taken-in',
  stage_since TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', stage_since) IS stage_since),
  -- what its invoices, credit notes and payments add up to, kept the same way
  due_minor INTEGER NOT NULL DEFAULT 0
, comeback_causes TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(comeback_causes)), goodwill TEXT NOT NULL DEFAULT '') STRICT;

CREATE TABLE run_in_dues (
  id INTEGER PRIMARY KEY,
  run_id INTEGER NOT NULL REFERENCES run_in_runs (id),
  kind TEXT NOT NULL CHECK (kind IN ('wind', 'reading')),
  due_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', due_at) IS due_at),
  done_at TEXT CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', done_at) IS done_at)
) STRICT;

CREATE TABLE run_in_runs (
  id INTEGER PRIMARY KEY,
  repair_id INTEGER NOT NULL REFERENCES repairs (id),
  place_id INTEGER REFERENCES shelf_places (id),
  started_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', started_at) IS started_at),
  policy TEXT NOT NULL CHECK (json_valid(policy)),
  -- seconds a day, either way, that the clock may leave with; decimal text
  limit_per_day TEXT NOT NULL,
  ready_on TEXT NOT NULL CHECK (date(ready_on) IS ready_on),
  ended_at TEXT CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', ended_at) IS ended_at AND ended_at >= started_at),
  outcome TEXT CHECK (outcome IN ('passed', 'restarted', 'to-bench')),
  reason TEXT NOT NULL DEFAULT '',
  decided_by INTEGER REFERENCES people (id),
  figures TEXT CHECK (json_valid(figures)), steady_within TEXT,
  CHECK ((ended_at IS NULL) = (outcome IS NULL))
) STRICT;

CREATE TABLE run_in_stages (
  id INTEGER PRIMARY KEY,
  run_id INTEGER NOT NULL REFERENCES run_in_runs (id),
  position INTEGER NOT NULL,
  name TEXT NOT NULL,
  from_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', from_at) IS from_at),
  to_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', to_at) IS to_at AND to_at >= from_at)
) STRICT;

CREATE TABLE series (
  name TEXT PRIMARY KEY,
  last INTEGER NOT NULL CHECK (last >= 0)
) STRICT, WITHOUT ROWID;

CREATE TABLE settings (
  name TEXT PRIMARY KEY,
  value TEXT NOT NULL CHECK (json_valid(value))
) STRICT, WITHOUT ROWID;

CREATE TABLE settled_taxes (
  id INTEGER PRIMARY KEY,
  repair_id INTEGER NOT NULL REFERENCES repairs (id),
  on_date TEXT NOT NULL CHECK (date(on_date) IS on_date),
  code TEXT NOT NULL,
  rate TEXT NOT NULL,
  kind TEXT NOT NULL,
  taxable_minor INTEGER NOT NULL,
  tax_minor INTEGER NOT NULL
) STRICT;

CREATE TABLE shelf_places (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL CHECK (trim(name) <> ''),
  kind TEXT NOT NULL CHECK (kind <> ''),
  -- the room there is, and whether weights can hang there; null where it was not said
  height_mm INTEGER CHECK (height_mm > 0),
  width_mm INTEGER CHECK (width_mm > 0),
  depth_mm INTEGER CHECK (depth_mm > 0),
  weights_hang INTEGER CHECK (weights_hang IN (0, 1)),
  walk_order INTEGER NOT NULL,
  active INTEGER NOT NULL DEFAULT 1 CHECK (active IN (0, 1))
, bears_g INTEGER CHECK (bears_g > 0)) STRICT;

CREATE TABLE steps_done (
  id INTEGER PRIMARY KEY,
  repair_id INTEGER NOT NULL REFERENCES repairs (id),
  step TEXT NOT NULL CHECK (step <> ''),
  done INTEGER NOT NULL CHECK (done IN (0, 1)),
  at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', at) IS at),
  person_id INTEGER REFERENCES people (id)
) STRICT;

CREATE TABLE stock_moves (
  id INTEGER PRIMARY KEY,
  part_id INTEGER NOT NULL REFERENCES parts (id),
  at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', at) IS at),
  person_id INTEGER REFERENCES people (id),
  kind TEXT NOT NULL CHECK (kind IN ('received', 'used', 'put-back', 'counted')),
  quantity INTEGER NOT NULL CHECK (quantity <> 0),
  repair_id INTEGER REFERENCES repairs (id),
  unit_cost_minor INTEGER NOT NULL CHECK (unit_cost_minor >= 0),
  unit_price_minor INTEGER NOT NULL CHECK (unit_price_minor >= 0),
  -- the use that is put back
  undoes_id INTEGER REFERENCES stock_moves (id),
  note TEXT NOT NULL DEFAULT '',
  CHECK ((kind IN ('used', 'put-back')) = (repair_id IS NOT NULL)),
  CHECK ((kind = 'put-back') = (undoes_id IS NOT NULL))
) STRICT;

CREATE TABLE vendors (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL CHECK (trim(name) <> ''),
  contact TEXT NOT NULL DEFAULT ''
) STRICT;

CREATE TABLE waits (
  id INTEGER PRIMARY KEY,
  repair_id INTEGER NOT NULL REFERENCES repairs (id),
  reason TEXT NOT NULL CHECK (reason <> ''),
  note TEXT NOT NULL DEFAULT '',
  from_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', from_at) IS from_at),
  until_at TEXT CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', until_at) IS until_at AND until_at >= from_at)
) STRICT;

CREATE TABLE warranties (
  id INTEGER PRIMARY KEY,
  repair_id INTEGER NOT NULL UNIQUE REFERENCES repairs (id),
  document_id INTEGER NOT NULL REFERENCES documents (id),
  scope TEXT NOT NULL,
  start_on TEXT NOT NULL CHECK (date(start_on) IS start_on),
  length INTEGER NOT NULL CHECK (length > 0),
  unit TEXT NOT NULL CHECK (unit IN ('months', 'days')),
  convention TEXT NOT NULL CHECK (convention IN ('same-date', 'day-before')),
  on_comeback TEXT NOT NULL CHECK (on_comeback IN ('restart', 'continue')),
  pauses_in_shop INTEGER NOT NULL CHECK (pauses_in_shop IN (0, 1)),
  last_day TEXT NOT NULL CHECK (date(last_day) IS last_day),
  exclusions TEXT NOT NULL CHECK (json_valid(exclusions))
) STRICT;

CREATE TABLE write_offs (
  id INTEGER PRIMARY KEY,
  at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', at) IS at),
  on_date TEXT NOT NULL CHECK (date(on_date) IS on_date),
  person_id INTEGER REFERENCES people (id),
  owner_id INTEGER NOT NULL REFERENCES owners (id),
  repair_id INTEGER REFERENCES repairs (id),
  payment_id INTEGER REFERENCES payments (id),
  kind TEXT NOT NULL CHECK (kind IN ('bad-debt', 'courtesy', 'rounding')),
  amount_minor INTEGER NOT NULL CHECK (amount_minor <> 0),
  reason TEXT NOT NULL DEFAULT '',
  CHECK ((kind = 'rounding') = (payment_id IS NOT NULL)),
  CHECK (repair_id IS NOT NULL OR kind = 'rounding')
) STRICT;

CREATE TRIGGER closed_periods_are_never_changed BEFORE UPDATE ON closed_periods BEGIN SELECT RAISE(ABORT, 'a closed period stays closed'); END;

CREATE TRIGGER closed_periods_are_never_deleted BEFORE DELETE ON closed_periods BEGIN SELECT RAISE(ABORT, 'a closed period stays closed'); END;

CREATE TRIGGER day_book_is_never_changed BEFORE UPDATE ON day_book
WHEN new.input IS NOT NULL OR new.salt IS NOT NULL OR new.result IS NOT NULL OR new.id IS NOT old.id OR new.at IS NOT old.at
  OR new.person_id IS NOT old.person_id OR new.act IS NOT old.act OR new.version IS NOT old.version OR new.key IS NOT old.key
  OR new.subject_kind IS NOT old.subject_kind OR new.subject_id IS NOT old.subject_id OR new.commitment IS NOT old.commitment
  OR new.previous_hash IS NOT old.previous_hash OR new.hash IS NOT old.hash OR new.former_hash IS NOT old.former_hash
BEGIN SELECT RAISE(ABORT, 'the day book is never changed'); END;

CREATE TRIGGER day_book_is_never_shortened BEFORE DELETE ON day_book BEGIN SELECT RAISE(ABORT, 'nothing is deleted from the day book'); END;

CREATE TRIGGER document_taxes_are_never_changed BEFORE UPDATE ON document_taxes BEGIN SELECT RAISE(ABORT, 'a document once issued is never changed'); END;

CREATE TRIGGER document_taxes_are_never_deleted BEFORE DELETE ON document_taxes BEGIN SELECT RAISE(ABORT, 'a document once issued is never deleted'); END;

CREATE TRIGGER documents_are_never_changed BEFORE UPDATE ON documents BEGIN SELECT RAISE(ABORT, 'a document once issued is never changed'); END;

CREATE TRIGGER documents_are_never_deleted BEFORE DELETE ON documents BEGIN SELECT RAISE(ABORT, 'a document once issued is never deleted'); END;

CREATE TRIGGER drawer_counts_are_never_changed BEFORE UPDATE ON drawer_counts BEGIN SELECT RAISE(ABORT, 'a count is never changed'); END;

CREATE TRIGGER drawer_counts_are_never_deleted BEFORE DELETE ON drawer_counts BEGIN SELECT RAISE(ABORT, 'a count is never changed'); END;

CREATE TRIGGER find_entries_added AFTER INSERT ON find_entries BEGIN
  INSERT INTO find_words (rowid, words) VALUES (new.id, new.words);
  INSERT INTO find_marks (rowid, marks) VALUES (new.id, new.marks);
END;

CREATE TRIGGER find_entries_changed AFTER UPDATE ON find_entries BEGIN
  INSERT INTO find_words (find_words, rowid, words) VALUES ('delete', old.id, old.words);
  INSERT INTO find_marks (find_marks, rowid, marks) VALUES ('delete', old.id, old.marks);
  INSERT INTO find_words (rowid, words) VALUES (new.id, new.words);
  INSERT INTO find_marks (rowid, marks) VALUES (new.id, new.marks);
END;

CREATE TRIGGER find_entries_removed AFTER DELETE ON find_entries BEGIN
  INSERT INTO find_words (find_words, rowid, words) VALUES ('delete', old.id, old.words);
  INSERT INTO find_marks (find_marks, rowid, marks) VALUES ('delete', old.id, old.marks);
END;

CREATE TRIGGER handed_papers_are_never_changed BEFORE UPDATE ON handed_papers BEGIN SELECT RAISE(ABORT, 'a paper once handed out is never changed'); END;

CREATE TRIGGER handed_papers_are_never_deleted BEFORE DELETE ON handed_papers
WHEN old.owner_id NOT IN (SELECT id FROM forgetting)
BEGIN SELECT RAISE(ABORT, 'a paper once handed out is never deleted'); END;

CREATE TRIGGER kept_handed_papers_are_never_changed BEFORE UPDATE ON kept_handed_papers BEGIN SELECT RAISE(ABORT, 'a paper once drawn is never changed'); END;

CREATE TRIGGER kept_handed_papers_are_never_deleted BEFORE DELETE ON kept_handed_papers
WHEN NOT EXISTS (SELECT 1 FROM handed_papers h JOIN forgetting f ON f.id = h.owner_id WHERE h.id = old.id)
BEGIN SELECT RAISE(ABORT, 'a paper once drawn is never deleted'); END;

CREATE TRIGGER kept_papers_are_never_changed BEFORE UPDATE ON kept_papers BEGIN SELECT RAISE(ABORT, 'a paper once drawn is never changed'); END;

CREATE TRIGGER kept_papers_are_never_deleted BEFORE DELETE ON kept_papers BEGIN SELECT RAISE(ABORT, 'a paper once drawn is never deleted'); END;

CREATE TRIGGER ledger_identity_is_never_changed BEFORE UPDATE OF identity ON ledger_identity BEGIN SELECT RAISE(ABORT, 'a ledger keeps its identity'); END;

CREATE TRIGGER ledger_identity_is_never_deleted BEFORE DELETE ON ledger_identity BEGIN SELECT RAISE(ABORT, 'a ledger keeps its identity'); END;

CREATE TRIGGER readings_are_never_changed BEFORE UPDATE ON readings BEGIN SELECT RAISE(ABORT, 'a reading is corrected by a new one'); END;

CREATE TRIGGER readings_are_never_deleted BEFORE DELETE ON readings BEGIN SELECT RAISE(ABORT, 'a reading is corrected by a new one'); END;

CREATE TRIGGER stock_moves_are_never_changed BEFORE UPDATE ON stock_moves BEGIN SELECT RAISE(ABORT, 'a stock move is never changed'); END;

CREATE TRIGGER stock_moves_are_never_deleted BEFORE DELETE ON stock_moves BEGIN SELECT RAISE(ABORT, 'a stock move is never deleted'); END;

CREATE TRIGGER write_offs_are_never_changed BEFORE UPDATE ON write_offs BEGIN SELECT RAISE(ABORT, 'a write-off is never changed'); END;

CREATE TRIGGER write_offs_are_never_deleted BEFORE DELETE ON write_offs BEGIN SELECT RAISE(ABORT, 'a write-off is never changed'); END;
