#!/bin/sh
exec env PYTHONPATH=/tmp/mem/dev nice -n 5 /work/w/memory/.xlbatch-env/env-sjzpuu4j/bin/python "$@"
