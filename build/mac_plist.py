"""What macOS is told of the application: which files it opens, when they are dropped on it or under Open With.

Written after the system's documentation of property lists and checked with Python's plistlib; not tried on a Mac.
"""

# Uniform type identifiers, as the system or the formats' makers declare them
LISTS = (
    "org.openxmlformats.spreadsheetml.sheet",
    "org.openxmlformats.spreadsheetml.sheet.macroenabled",
    "com.microsoft.excel.xls",
    "org.oasis-open.opendocument.spreadsheet",
    "public.comma-separated-values-text",
)


def _kind(name: str, types: tuple[str, ...]) -> dict[str, object]:
    return {
        "CFBundleTypeName": name,
        "CFBundleTypeRole": "Viewer",  # a list is read and never written
        "LSItemContentTypes": list(types),
        "LSHandlerRank": "Alternate",  # offered under Open With; the spreadsheet stays what opens a workbook
    }


def plist(version: str) -> dict[str, object]:
    """The entries beside those that PyInstaller writes."""
    return {
        "CFBundleShortVersionString": version,
        "CFBundleVersion": version,
        "LSApplicationCategoryType": "public.app-category.productivity",
        "NSHighResolutionCapable": True,
        "NSRequiresAquaSystemAppearance": True,  # the window has light colors of its own
        "CFBundleDocumentTypes": [_kind("List of people", LISTS), _kind("Folder of lists", ("public.folder",))],
    }
