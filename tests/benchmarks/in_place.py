"""A changed module put in the place of one that is loaded: its functions get the changed code, its constants the
changed values, wherever they were imported. Quicker than loading the program anew; what a constant went into while the
program was loaded stays."""

import contextlib
import sys
from collections.abc import Iterator
from types import FunctionType, ModuleType


def put(module: ModuleType, source: bytes) -> None:
    """Puts the source's code in the module's place."""
    changed = ModuleType(module.__name__)
    changed.__file__ = module.__file__
    exec(compile(source, str(module.__file__), "exec"), vars(changed))
    for name, new in vars(changed).items():
        old = vars(module).get(name)
        if isinstance(new, type) and new.__module__ == module.__name__:
            for part, value in vars(new).items():
                _put_code(vars(old).get(part), value)
        elif _function(new):
            _put_code(old, new)
        elif not name.startswith("__") and not isinstance(new, type | ModuleType):
            _put_value(name, old, new)
    _forget(module.__name__)


def _forget(name: str) -> None:
    """Empties what the program remembers between two jobs, but for the tables of the trade where they are as before."""
    for loaded in [module for at, module in sys.modules.items() if at.startswith("xlbatch")]:
        if loaded.__name__ == name or not loaded.__name__.startswith("xlbatch.trade"):
            for value in list(vars(loaded).values()):
                if hasattr(value, "cache_clear"):
                    value.cache_clear()


def _put_code(old: object, new: object) -> None:
    for one, other in zip(_functions(old), _functions(new), strict=False):
        if one.__code__ != other.__code__ and one.__code__.co_freevars == other.__code__.co_freevars:
            one.__code__, one.__defaults__, one.__kwdefaults__ = (
                other.__code__,
                other.__defaults__,
                other.__kwdefaults__,
            )


def _functions(value: object) -> Iterator[FunctionType]:
    """The functions behind a method, a property or a decorated function."""
    if isinstance(value, property):
        yield from _functions(value.fget)
    elif function := _function(value):
        yield function


def _function(value: object) -> FunctionType | None:
    value = getattr(value, "func", value)  # a cached property
    value = getattr(value, "__func__", value)
    while inner := getattr(value, "__wrapped__", None):  # a cache, a context manager
        value = inner
    return value if isinstance(value, FunctionType) else None


def _put_value(name: str, old: object, new: object) -> None:
    with contextlib.suppress(Exception):  # what cannot be compared
        if old == new or repr(old) == repr(new):
            return
        for module in list(sys.modules.values()):
            if vars(module).get(name) is old and module.__name__.startswith("xlbatch"):
                setattr(module, name, new)
