"""A rider's phone with a WebKit engine, as iPhones have: WebKitGTK steered by Selenium, in a profile on disk."""

import ctypes.util
import os
import shutil
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

from selenium import webdriver
from selenium.webdriver.remote.client_config import ClientConfig
from selenium.webdriver.remote.remote_connection import RemoteConnection
from selenium.webdriver.remote.webelement import WebElement

from browser.running_server import free_port

INSTALL = (
    "The WebKit tests need WebKitGTK and a display: run tests/run, "
    "or apt-get install webkit2gtk-driver libwebkit2gtk-4.1-0 xvfb."
)
PATIENCE_S = 20

# What a person would press or fill in under that name, among what can be seen.
FIND = """
const [selector, name] = arguments;
const words = (one) => (one.getAttribute('aria-label') || one.labels?.[0]?.innerText || one.innerText).trim();
return [...document.querySelectorAll(selector)].find((one) => one.offsetParent && words(one).startsWith(name)) ?? null;
"""


def program(name: str) -> str:
    found = shutil.which(name)
    assert found, f"{name} is missing. {INSTALL}"
    return found


def engine() -> str:
    found = ctypes.util.find_library("webkit2gtk-4.1")
    assert found, f"The library libwebkit2gtk-4.1 is missing. {INSTALL}"
    return found


class WebKitPhone:
    """`kill` ends engine and driver as a flat battery would; `open` starts them again on the same profile."""

    def __init__(self, profile: Path, address: str, display: str) -> None:
        self.profile, self.address, self.display = profile, address, display
        self.driver: webdriver.Remote | None = None
        self.process: subprocess.Popen | None = None

    def open(self, path: str = "/") -> None:
        engine()
        port = free_port()
        self.process = subprocess.Popen(
            [program("WebKitWebDriver"), f"--port={port}"], start_new_session=True,
            stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
            env={**os.environ, "DISPLAY": self.display, "GDK_BACKEND": "x11", "NO_AT_BRIDGE": "1"},
        )  # fmt: skip
        self.until(lambda: self.listens(port), "the driver listens")
        self.driver = self.new_session(port)
        self.driver.set_page_load_timeout(PATIENCE_S)
        self.go(path)

    def listens(self, port: int) -> bool:
        with socket.socket() as probe:
            return probe.connect_ex(("127.0.0.1", port)) == 0

    def new_session(self, port: int) -> webdriver.Remote:
        options = webdriver.WebKitGTKOptions()
        options.binary_location = sys.executable
        options.add_argument(str(Path(__file__).with_name("little_browser.py")))
        options.add_argument(str(self.profile))
        where = ClientConfig(remote_server_addr=f"http://127.0.0.1:{port}", timeout=60)
        return webdriver.Remote(RemoteConnection(client_config=where), options=options)

    def kill(self) -> None:
        """SIGKILL to driver, browser, page and network process: nothing gets to say goodbye."""
        if self.process:
            os.killpg(self.process.pid, signal.SIGKILL)
            self.process.wait(10)
        self.process = self.driver = None

    # what a person does

    def go(self, path: str) -> None:
        self.driver.get(self.address + path)

    def reload(self) -> None:
        self.driver.refresh()

    def tap(self, name: str, selector: str = "button, a") -> None:
        button = self.find(selector, name)
        self.run("arguments[0].scrollIntoView({ block: 'center' })", button)  # the driver would leave it below the bar
        self.until(lambda: self.stands_still(button), f"“{name}” stands still")
        button.click()

    def stands_still(self, button: WebElement) -> bool:
        """Whether it kept its place for a while: what is read from the phone meanwhile moves what stands below."""
        where = "const { x, y } = arguments[0].getBoundingClientRect(); return [x, y]"
        before = self.run(where, button)
        for _ in range(2):
            time.sleep(0.15)
            if self.run(where, button) != before:
                return False
        return True

    def fill(self, label: str, text: str) -> None:
        self.find("input, textarea", label).send_keys(text)

    def find(self, selector: str, name: str) -> WebElement:
        return self.until(lambda: self.run(FIND, selector, name), f"there is “{name}”")

    def sees(self, text: str, patience_s: float = PATIENCE_S) -> None:
        self.until(lambda: text in self.text(), f"the screen says “{text}”", patience_s)

    def text(self) -> str:
        return self.run("return document.body.innerText")

    def run(self, script: str, *given):
        return self.driver.execute_script(script, *given)

    def until(self, ready: Callable, what: str, patience_s: float = PATIENCE_S):
        """What `ready` answers as soon as it is true; an error with `what` and the screen's text if it never is."""
        end = time.monotonic() + patience_s
        while time.monotonic() < end:
            if found := ready():
                return found
            time.sleep(0.1)
        raise AssertionError(f"Waited {patience_s} s until {what}.\n{self.text() if self.driver else ''}")

    def sign_in(self, name: str, password: str) -> None:
        self.fill("Sign-in name", name)
        self.fill("Password", password)
        self.tap("Sign in", "button")

    def ready_for_the_field(self) -> None:
        """Waits until the worker keeps the shell and the logbook is on the phone."""
        controlled = "return !!navigator.serviceWorker.controller"
        self.until(lambda: self.run(controlled), "the worker has taken over")
        self.sees("All sent at")
