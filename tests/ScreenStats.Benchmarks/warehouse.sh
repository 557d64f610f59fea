#!/bin/bash
# One synthetic program in files, on one PostgreSQL server, and on three shards behind it: user and wall time, lines that move, and whether
# the tables are the same bytes. Needs PostgreSQL's programs (PG_BIN, default Debian's), a user postgres, and about 0.7 GB of disk for a million runs;
# DIR stays, to look at, and is removed by hand. BUCKETS=12 gives each shard four buckets in place of one.
#   tests/ScreenStats.Benchmarks/warehouse.sh [RUNS] [DIR]       default 20000000 runs in a new temporary folder
set -euo pipefail
RUNS=${1:-20000000}
WORK=${2:-$(mktemp -d /tmp/screenstats-warehouse.XXXXXX)}
ROOT=$(cd "$(dirname "$0")/../.." && pwd)
PG_BIN=${PG_BIN:-/usr/lib/postgresql/15/bin}
PORT=${PORT:-25910}
BUCKETS=${BUCKETS:-3}
RUNNER="$ROOT/src/ScreenStats.Cli/bin/Release/net10.0/ScreenStats.Cli"
export PGUSER=postgres PGHOST=127.0.0.1 PGTZ=UTC
mkdir -p "$WORK"
chmod 755 "$WORK"
mkdir -p "$WORK/pg"
[ "$(id -u)" -ne 0 ] || chown postgres "$WORK/pg"
as_postgres() { if [ "$(id -u)" -eq 0 ]; then runuser -u postgres -- "$@"; else "$@"; fi; }
sql() { local port=$1; shift; psql -q -p "$port" -d postgres -v ON_ERROR_STOP=1 "$@"; }
stop() { for i in 0 1 2 3; do as_postgres "$PG_BIN/pg_ctl" -D "$WORK/pg/$i" -m immediate stop >/dev/null 2>&1 || true; done; }
trap stop EXIT

dotnet build "$ROOT/src/ScreenStats.Cli" -c Release -p:Warehouse=true -v q --nologo
[ -f "$WORK/files/screening.csv" ] || "$RUNNER" synthesize "$WORK/files" --seed 1 --runs "$RUNS" >/dev/null

for i in 0 1 2 3; do
    as_postgres "$PG_BIN/initdb" -D "$WORK/pg/$i" -A trust -U postgres -E UTF8 --locale=C.UTF-8 >/dev/null
    as_postgres mkdir -p "$WORK/pg/socket$i"
    as_postgres tee -a "$WORK/pg/$i/postgresql.conf" >/dev/null <<CONF
port = $((PORT + i))
listen_addresses = '127.0.0.1'
unix_socket_directories = '$WORK/pg/socket$i'
shared_buffers = 512MB
work_mem = 256MB
max_wal_size = 8GB
fsync = off
shared_preload_libraries = 'pg_stat_statements'
CONF
    as_postgres "$PG_BIN/pg_ctl" -D "$WORK/pg/$i" -l "$WORK/pg/log$i" -w start >/dev/null
done

RUN_COLUMNS="screen_id text, person text, site text, collected_at timestamptz, result text, lot text, kit text, operator text, specimen text, collection text"
SPECIMEN_COLUMNS="person text, collected_at timestamptz, result text, reported_at timestamptz, method text, reason text, sampling_stratum text"
names() { echo "$1" | sed -E 's/ (text|timestamptz)//g'; }

# One server: rows as they come from the files, with a bucket of the person and the local date.
for i in 0 1 2 3; do sql $((PORT + i)) -c "create extension pg_stat_statements"; done
sql "$PORT" <<SQL
create schema one; create schema sharded; create extension postgres_fdw;
create unlogged table one.screening_rows($RUN_COLUMNS, row_number bigserial);
create unlogged table one.confirmatory_rows($SPECIMEN_COLUMNS, row_number bigserial);
\copy one.screening_rows($(names "$RUN_COLUMNS")) from '$WORK/files/screening.csv' csv header
\copy one.confirmatory_rows($(names "$SPECIMEN_COLUMNS")) from '$WORK/files/confirmatory.csv' csv header
create unlogged table one.screening as select *, (hashtext(person) & 1048575) % $BUCKETS as bucket, collected_at::date as collected_on from one.screening_rows;
create unlogged table one.confirmatory as select *, (hashtext(person) & 1048575) % $BUCKETS as bucket, collected_at::date as collected_on from one.confirmatory_rows;
drop table one.screening_rows, one.confirmatory_rows;
vacuum analyze one.screening; vacuum analyze one.confirmatory;
SQL

# Shards: partitions by lists of buckets, so that a person's rows lie together. They are loaded directly.
ALL_RUN="$RUN_COLUMNS, row_number bigint, bucket int, collected_on date"
ALL_SPECIMEN="$SPECIMEN_COLUMNS, row_number bigint, bucket int, collected_on date"
sql "$PORT" -c "create table sharded.screening($ALL_RUN) partition by list(bucket)" -c "create table sharded.confirmatory($ALL_SPECIMEN) partition by list(bucket)"
for i in 1 2 3; do
    sql $((PORT + i)) -c "create unlogged table screening($ALL_RUN)" -c "create unlogged table confirmatory($ALL_SPECIMEN)"
    sql "$PORT" -c "create server shard$i foreign data wrapper postgres_fdw options (host '127.0.0.1', port '$((PORT + i))', dbname 'postgres', use_remote_estimate 'true', async_capable 'true', fetch_size '10000', fdw_tuple_cost '1')" \
        -c "create user mapping for public server shard$i options (user 'postgres')"
    for table in screening confirmatory; do
        own=$(seq -s , $((i - 1)) 3 $((BUCKETS - 1)))
        sql "$PORT" -c "create foreign table sharded.${table}_$i partition of sharded.$table for values in ($own) server shard$i options (schema_name 'public', table_name '$table')"
        columns=$([ $table = screening ] && names "$RUN_COLUMNS" || names "$SPECIMEN_COLUMNS")
        sql "$PORT" -c "\copy (select $columns, row_number, bucket, collected_on from one.$table where bucket in ($own)) to stdout" \
            | sql $((PORT + i)) -c "\copy $table($columns, row_number, bucket, collected_on) from stdin"
        sql $((PORT + i)) -c "vacuum analyze $table"
    done
done
sql "$PORT" -c "analyze sharded.screening" -c "analyze sharded.confirmatory"

for where in one sharded; do
    mkdir -p "$WORK/$where"
    sed "0,/{/s//{ \"warehouse\": { \"url\": \"postgresql:\/\/127.0.0.1:$PORT\/postgres\", \"screening\": \"$where.screening\", \"confirmatory\": \"$where.confirmatory\" },/" "$WORK/files/program.json" > "$WORK/$where/program.json"
done

lines() { psql -qtA -p "$1" -d postgres -c "select coalesce(sum(rows), 0) from pg_stat_statements where query not ilike '%pg_stat_statements%'"; }
echo "| rows where | wall s | user s (ours) | peak MB (ours) | lines to us | lines from shards |"
echo "|---|---|---|---|---|---|"
for where in files one sharded; do
    for i in 0 1 2 3; do sql $((PORT + i)) -c "select pg_stat_statements_reset()" >/dev/null; done
    /usr/bin/time -o "$WORK/$where.time" -f "%e %U %M" "$RUNNER" evaluate "$WORK/$where" --out "$WORK/report-$where" >/dev/null 2>"$WORK/$where.said" || { cat "$WORK/$where.said"; exit 1; }
    read -r wall user peak < "$WORK/$where.time"
    echo "| $where | $wall | $user | $((peak / 1024)) | $(lines "$PORT") | $(($(lines $((PORT + 1))) + $(lines $((PORT + 2))) + $(lines $((PORT + 3))))) |"
done
for where in one sharded; do diff -r "$WORK/report-files/tables" "$WORK/report-$where/tables" >/dev/null && echo "$where: the same tables as the files"; done
grep -h -B3 "warehouse-not-pushed" "$WORK"/*.said || echo "sharded: every grouping happens on the shards"
