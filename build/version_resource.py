"""What Windows shows of the program under Properties, Details."""


def version_resource(version: str) -> object:
    """The version resource for `version`, as PyInstaller takes it. Only on Windows."""
    from PyInstaller.utils.win32 import versioninfo as win

    four = tuple([*map(int, version.split(".")), 0, 0, 0][:4])
    texts = {
        "ProductName": "xlbatch",
        "FileDescription": "xlbatch: plans a batch of personalized shirts",
        "FileVersion": version,
        "ProductVersion": version,
        "OriginalFilename": "xlbatch.exe",
        "LegalCopyright": "MIT License",
    }
    american, unicode = 0x0409, 1200
    return win.VSVersionInfo(
        ffi=win.FixedFileInfo(filevers=four, prodvers=four),
        kids=[
            win.StringFileInfo([win.StringTable("040904B0", [win.StringStruct(*each) for each in texts.items()])]),
            win.VarFileInfo([win.VarStruct("Translation", [american, unicode])]),
        ],
    )
