"""The smallest WebKitGTK browser that a driver can steer and that keeps its profile on disk.

`python little_browser.py FOLDER`. MiniBrowser, the driver's own choice, forgets everything at its end, so nothing
could be tried that has to outlive a killed browser. Only the engine's own C functions are used, by ctypes.
"""

import ctypes
import sys
from ctypes import CFUNCTYPE, c_char_p, c_int, c_void_p
from pathlib import Path

PHONE = (360, 740)  # px, inside the window
SQLITE = 1  # WEBKIT_COOKIE_PERSISTENT_STORAGE_SQLITE


def library(name: str, *with_pointers: str) -> ctypes.CDLL:
    """The library, with the named functions known to return pointers."""
    loaded = ctypes.CDLL(name)
    for function in with_pointers:
        getattr(loaded, function).restype = c_void_p
    return loaded


gtk = library("libgtk-3.so.0", "gtk_window_new")
gobject = library("libgobject-2.0.so.0", "g_object_new")
webkit = library(
    "libwebkit2gtk-4.1.so.0", "webkit_website_data_manager_new", "webkit_website_data_manager_get_cookie_manager",
    "webkit_web_context_new_with_website_data_manager", "webkit_application_info_new", "webkit_web_view_get_type",
)  # fmt: skip
Started = CFUNCTYPE(None, c_void_p, c_void_p, c_void_p)
WantsView = CFUNCTYPE(c_void_p, c_void_p, c_void_p)
kept: list = []  # what C still points at must not be collected


def connect(thing: int, signal: bytes, handler) -> None:
    kept.append(handler)
    gobject.g_signal_connect_data(c_void_p(thing), signal, handler, None, None, c_int(0))


def context_in(folder: Path) -> int:
    """The engine with its storage, caches and cookies below `folder`."""
    where = [c_char_p(str(folder / name).encode()) for name in ("data", "cache")]
    data = webkit.webkit_website_data_manager_new(
        b"base-data-directory", where[0], b"base-cache-directory", where[1], c_void_p(None)
    )
    cookies = webkit.webkit_website_data_manager_get_cookie_manager(c_void_p(data))
    webkit.webkit_cookie_manager_set_persistent_storage(
        c_void_p(cookies), c_char_p(str(folder / "cookies.db").encode()), c_int(SQLITE)
    )
    return webkit.webkit_web_context_new_with_website_data_manager(c_void_p(data))


def new_view(context: int) -> int:
    """A page in a window of a phone's size, for the driver."""
    view = gobject.g_object_new(
        c_void_p(webkit.webkit_web_view_get_type()), b"web-context", c_void_p(context),
        b"is-controlled-by-automation", c_int(1), c_void_p(None),
    )  # fmt: skip
    window = c_void_p(gtk.gtk_window_new(c_int(0)))
    gtk.gtk_window_set_default_size(window, *PHONE)
    gtk.gtk_container_add(window, c_void_p(view))
    gtk.gtk_widget_show_all(window)
    return view


def be_steered(context: int) -> None:
    def started(_context, session, _data) -> None:
        about = c_void_p(webkit.webkit_application_info_new())
        webkit.webkit_application_info_set_name(about, b"MiniBrowser")  # the name Selenium asks for
        webkit.webkit_automation_session_set_application_info(c_void_p(session), about)
        connect(session, b"create-web-view", WantsView(lambda _session, _data: new_view(context)))

    webkit.webkit_web_context_set_automation_allowed(c_void_p(context), c_int(1))
    connect(context, b"automation-started", Started(started))


if __name__ == "__main__":
    folder = Path(sys.argv[1])
    folder.mkdir(parents=True, exist_ok=True)
    gtk.gtk_init(None, None)
    be_steered(context_in(folder))
    gtk.gtk_main()
