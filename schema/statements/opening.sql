-- Opening the file, bringing it up to date, and transactions.

-- name: get_application
PRAGMA application_id;

-- name: get_schema_version
PRAGMA user_version;

-- name: get_data_version
PRAGMA data_version;

-- name: get_table_count
SELECT count(*) FROM sqlite_schema;

-- The answer is the mode that was granted.
-- name: get_journal
PRAGMA journal_mode;

-- name: set_journal
PRAGMA journal_mode = WAL;

-- The cache grows to 64 MiB where a change is that large.
-- name: set_habits
PRAGMA synchronous = FULL;
PRAGMA foreign_keys = ON;
PRAGMA temp_store = MEMORY;
PRAGMA cache_size = -65536;

-- name: set_foreign_keys_off
PRAGMA foreign_keys = OFF;

-- name: set_foreign_keys_on
PRAGMA foreign_keys = ON;

-- name: begin_reading
BEGIN;

-- name: begin_writing
BEGIN IMMEDIATE;

-- name: begin_alone
BEGIN EXCLUSIVE;

-- name: commit_all
COMMIT;

-- name: roll_back
ROLLBACK;

-- name: count_dangling
SELECT count(*) FROM pragma_foreign_key_check;
