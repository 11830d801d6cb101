#!/bin/sh
# An interrupted batch keeps what it has, says so, and can be taken up again; a file is never there
# half written.
#   batch_resume.sh PROGRAM EXAMPLES SCRATCH
set -eu
program=$1
examples=$2
scratch=$3
rm -rf "$scratch"
mkdir -p "$scratch"
cd "$scratch"
i=0
for file in "$examples"/*.json; do
  sed -e 's|^ *//.*||' "$file" | tr '\n' ' ' >>once.ndjson
  echo >>once.ndjson
done
while [ "$i" -lt 40 ]; do
  cat once.ndjson >>stream.ndjson
  i=$((i + 1))
done
records=$(wc -l <stream.ndjson)

for format in ndjson csv; do
  "$program" batch stream.ndjson --format $format --output whole.$format 2>whole.log || test $? -le 2
  test ! -e whole.$format.partial
  # Standard input that stays open: the batch is surely still running when the signal comes.
  mkfifo pipe.$format
  "$program" batch - --format $format --jobs 2 --output broken.$format <pipe.$format 2>broken.log &
  batch=$!
  exec 9>pipe.$format
  head -n $((records / 2)) stream.ndjson >&9
  while [ ! -s broken.$format.partial ]; do sleep 0.05; done
  kill -TERM $batch
  kill -TERM $batch 2>/dev/null || true # as those do who stop a whole group of processes
  status=0
  wait $batch || status=$?
  exec 9>&-
  test $status -eq 143
  test ! -e broken.$format
  tail -n 1 broken.$format.partial | grep -q partial
  # From the beginning of the same input, less what is done. Standard input again, so that the
  # places in the lines agree with those of a whole run over it.
  "$program" batch - --format $format --output broken.$format --resume <stream.ndjson 2>resume.log ||
    test $? -le 2
  test ! -e broken.$format.partial
  "$program" batch - --format $format --output again.$format <stream.ndjson 2>again.log || test $? -le 2
  cmp again.$format broken.$format
done
grep -q partial broken.ndjson && exit 1
exit 0
