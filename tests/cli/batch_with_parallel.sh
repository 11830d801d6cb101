#!/bin/sh
# GNU parallel over pieces of a stream gives the lines of one process, up to their order.
#   batch_with_parallel.sh PROGRAM EXAMPLES SCRATCH; status 77 where parallel is not installed
set -eu
program=$1
examples=$2
scratch=$3
command -v parallel >/dev/null 2>&1 || exit 77
parallel --version 2>/dev/null | grep -q 'GNU parallel' || exit 77
mkdir -p "$scratch"
cd "$scratch"
# The examples five times, one a line, without their comments, each with an id.
: >stream.ndjson
i=0
while [ "$i" -lt 5 ]; do
  for file in "$examples"/*.json; do
    id="$(basename "$file" .json)-$i"
    sed -e 's|^ *//.*||' "$file" | tr '\n' ' ' | sed -e "s|^ *{|{\"id\": \"$id\",|" >>stream.ndjson
    echo >>stream.ndjson
  done
  i=$((i + 1))
done
fields=id,outcome,limiting_state,limiting_weather,margin_pa,opening_share,capacity_kg_s,findings,error
"$program" batch - --format ndjson --fields $fields <stream.ndjson >single.ndjson 2>single.log ||
  test $? -le 2
# parallel ends with the number of pieces whose status was not 0: short records do that.
parallel --pipe --block 20k "$program" batch - --format ndjson --jobs 1 --fields $fields \
  <stream.ndjson >pieces.ndjson 2>pieces.log || true
test "$(wc -l <single.ndjson)" -eq "$(wc -l <stream.ndjson)"
LC_ALL=C sort single.ndjson >single.sorted
LC_ALL=C sort pieces.ndjson >pieces.sorted
cmp single.sorted pieces.sorted
