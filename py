#!/bin/sh
exec env PYTHONPATH=/tmp/buy/dev nice -n 5 /work/w/buy/.xlbatch-env/env-sjzpuu4j/bin/python "$@"
