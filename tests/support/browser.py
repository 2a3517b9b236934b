"""A browser without a window, for the page: Chromium by its driver, or none where there is none.

``YARDFAST_AXE`` names the script of axe-core, which `.ci/run` fetches from the npm registry.
"""

import json
import os
import shutil
import time
from contextlib import contextmanager
from pathlib import Path

NAMES = ("chromium", "chromium-browser", "google-chrome")
FLAGS = (
    *("--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-sync"),
    *("--disable-background-networking", "--disable-component-update", "--disable-dev-shm-usage"),
)
PATIENCE = 60.0


def missing():
    """Return why no browser can be driven here, or nothing."""
    try:
        import selenium  # noqa: F401
    except ImportError:
        return "selenium is not installed"
    if not any(map(shutil.which, NAMES)):
        return "no Chromium is installed; .ci/run installs Debian's"
    return "" if shutil.which("chromedriver") else "no chromedriver is installed"


def axe():
    """Return the script of axe-core, None where it was not fetched."""
    file = Path(os.environ.get("YARDFAST_AXE", "none"))
    return file.read_text(encoding="utf-8") if file.is_file() else None


@contextmanager
def browser(profile, width=1360, height=900):
    """Start a browser with a profile of its own; end it afterwards."""
    from selenium import webdriver
    from selenium.webdriver.chrome.options import Options
    from selenium.webdriver.chrome.service import Service

    options = Options()
    options.binary_location = next(filter(None, map(shutil.which, NAMES)))
    for flag in (*FLAGS, f"--user-data-dir={profile}", f"--window-size={width},{height}"):
        options.add_argument(flag)
    options.add_experimental_option("prefs", {"download.default_directory": str(profile)})
    options.set_capability("goog:loggingPrefs", {"browser": "ALL", "performance": "ALL"})
    driver = webdriver.Chrome(options=options, service=Service(shutil.which("chromedriver")))
    driver.set_script_timeout(PATIENCE)
    try:
        yield driver
    finally:
        driver.quit()


def until(found, patience=PATIENCE):
    """Return what a function finds, once it finds something; fail where it never does."""
    end = time.monotonic() + patience
    while time.monotonic() < end:
        if what := found():
            return what
        time.sleep(0.02)
    raise AssertionError("it never came")


def asked_for(driver):
    """Return every address that the browser asked for since this was asked last."""
    found = []
    for entry in driver.get_log("performance"):
        message = json.loads(entry["message"])["message"]
        if message["method"] == "Network.requestWillBeSent":
            found.append(message["params"]["request"]["url"])
    return found
