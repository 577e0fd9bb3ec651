"""A phone of the local network: kept out, let in with the code, and then used in the hangar.

Its place is taken by a second address of this machine: what comes to 127.0.0.2 has to pair like anybody.
"""

from __future__ import annotations

import http.client
import re
import socket

import pytest
from looks import outside, small_targets, violations
from playwright.sync_api import expect
from served import SLOW, serving

from firmpedal.web.pairing import TRIES
from texts import example

HTTP = "http://"
SECOND = "127.0.0.2"
PHONE = {"viewport": {"width": 390, "height": 844}, "has_touch": True, "is_mobile": True}
CODE = re.compile(r"Code for the phone: (\d{6})")
FORM = {"Content-Type": "application/x-www-form-urlencoded"}
# What a browser sends to open a socket, after RFC 6455, 1.3; the key is the example there.
SOCKET = (
    "GET /_nicegui_ws/socket.io/?EIO=4&transport=websocket HTTP/1.1\r\nHost: {host}\r\n"
    "Upgrade: websocket\r\nConnection: Upgrade\r\n"
    "Sec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==\r\nSec-WebSocket-Version: 13\r\n{more}\r\n"
)  # fmt: skip


def reachable():
    with socket.socket() as probe:
        try:
            probe.bind((SECOND, 0))
        except OSError:
            return False
    return True


pytestmark = pytest.mark.skipif(not reachable(), reason="this machine has no second address to itself")


@pytest.fixture
def folder(tmp_path):
    (tmp_path / "mine.yaml").write_text(example("brindlewick"), encoding="utf-8")
    return tmp_path


@pytest.fixture
def app(folder):
    with serving(folder, "--lan") as served:
        served.port = int(served.base.rpartition(":")[2])
        served.phones = f"{HTTP}{SECOND}:{served.port}"
        yield served


def code_of(app):
    """The last code that the terminal showed."""
    while not CODE.search(app.said):
        app.said += app.more()
    return CODE.findall(app.said)[-1]


def wrong(code):
    return f"{(int(code) + 1) % 10**6:06d}"


def asked(app, path, method="GET", body=None, host=SECOND, **headers):
    line = http.client.HTTPConnection(host, app.port, timeout=30)
    line.request(method, path, body, {**(FORM if body else {}), **headers})
    answer = line.getresponse()
    text = answer.read().decode("utf-8", "replace")
    line.close()
    return answer, text


def paired(app, code):
    """The cookie that a code brings; none where it is refused."""
    answer, _ = asked(app, "/pair", "POST", f"code={code}")
    cookie = answer.getheader("Set-Cookie")
    return cookie.split(";")[0] if answer.status == 303 and cookie else None


def socket_opens(app, host=SECOND, **headers):
    with socket.create_connection((host, app.port), timeout=30) as line:
        more = "".join(f"{name}: {word}\r\n" for name, word in headers.items())
        line.sendall(SOCKET.format(host=f"{host}:{app.port}", more=more).encode())
        return line.recv(64).startswith(b"HTTP/1.1 101")


def test_without_being_asked_it_does_not_listen_on_the_network(folder):
    with serving(folder) as served, pytest.raises(ConnectionRefusedError):
        socket.create_connection((SECOND, int(served.base.rpartition(":")[2])), timeout=5)


def test_over_real_sockets_only_the_code_opens(app):
    assert asked(app, "/", host="127.0.0.1")[0].status == 200
    answer, text = asked(app, "/aircraft/mine.yaml/make")
    assert answer.status == 403
    assert "Brindlewick" not in text
    assert not socket_opens(app)
    code = code_of(app)
    assert paired(app, wrong(code)) is None
    cookie = paired(app, code)
    assert cookie
    assert asked(app, "/aircraft/mine.yaml/make", Cookie=cookie)[0].status == 200
    assert socket_opens(app, Cookie=cookie)
    assert not socket_opens(app, Cookie=cookie, Origin=HTTP + "example.org")
    assert asked(app, "/", Cookie=cookie, Origin=HTTP + "example.org")[0].status == 403
    assert asked(app, "/", Cookie=cookie, **{"X-Forwarded-For": "127.0.0.1"})[0].status == 200
    assert asked(app, "/new", Cookie=cookie, **{"X-Forwarded-For": "127.0.0.1"})[0].status == 403
    assert asked(app, "/begin/example", "POST", "example=oatmere", Cookie=cookie)[0].status == 403
    assert paired(app, code) is None  # it let one in


def test_after_too_many_wrong_codes_the_right_one_is_refused(app):
    code = code_of(app)
    for _ in range(TRIES):
        assert paired(app, wrong(code)) is None
    answer, text = asked(app, "/pair", "POST", f"code={code}")
    assert answer.status == 403
    assert "too many wrong codes" in text
    assert answer.getheader("Set-Cookie") is None


def test_from_the_code_on_the_computer_to_a_tick_in_the_hangar(app, new_context, folder):
    computer = new_context(viewport={"width": 1280, "height": 900}).new_page()
    computer.goto(app.first)
    computer.get_by_role("link", name="Let a phone in").click()
    shown = computer.get_by_role("status")
    expect(shown).to_have_text(re.compile(r"^\d{3} \d{3}$"), timeout=SLOW)
    phone = new_context(**PHONE).new_page()
    phone.set_default_timeout(SLOW)
    elsewhere = []
    phone.on("request", lambda it: None if app.phones in it.url else elsewhere.append(it.url))
    phone.goto(f"{app.phones}/aircraft/mine.yaml/prove")
    assert outside(phone) == []
    assert small_targets(phone, 44) == []
    assert violations(phone) == []
    phone.get_by_label("Code from the computer").fill("12")
    phone.get_by_role("button", name="Let this phone in").click()
    expect(phone.get_by_role("alert")).to_contain_text("not the code")
    phone.get_by_label("Code from the computer").fill(shown.inner_text())
    phone.get_by_role("button", name="Let this phone in").click()
    expect(computer.locator(".fp-main")).to_contain_text("1 phone let in", timeout=SLOW)
    expect(phone.get_by_role("link", name="Begin")).to_have_count(0)
    phone.locator(".fp-row").click()
    expect(phone.locator(".fp-finding").first).to_be_visible(timeout=SLOW)
    phone.locator(".fp-fold > summary").first.click()
    expect(phone.locator(".fp-fold-in").first).to_contain_text("plastic-in-hot-place")
    expect(phone.locator(".fp-measure-thing").first).to_be_visible()  # folded: what is missing of what
    expect(phone.locator(".fp-sound :is(form, input, a[href*=describe])")).to_have_count(0)
    phone.get_by_role("link", name="Prove").click()
    expect(phone.get_by_role("link", name="Describe")).to_have_count(0)
    expect(phone.get_by_role("button", name="Undo")).to_be_hidden()
    box = phone.locator("article input[type=checkbox]").first
    box.check()
    phone.reload()
    expect(box).to_be_checked(timeout=SLOW)
    phone.get_by_role("link", name="Keep").click()
    expect(phone.get_by_role("link", name="Open the packet")).to_be_visible(timeout=SLOW)
    expect(phone.get_by_role("link", name="Take to the hangar")).to_be_visible()
    expect(phone.get_by_role("button", name="Make the packet")).to_have_count(0)
    phone.get_by_role("link", name="side by side").click()
    expect(phone.locator(".fp-abreast .fp-card")).to_have_count(3, timeout=SLOW)
    phone.get_by_role("link", name="Make", exact=True).click()
    expect(phone.locator(".fp-main")).to_contain_text("made on the computer", timeout=SLOW)
    assert phone.request.get(f"{app.phones}/export/mine.yaml/dxf.zip?option=rigid").status == 403
    assert phone.request.get(f"{app.phones}/paper/mine.yaml/hangar.html").status == 200
    (folder / "mine.yaml").write_text(
        example("brindlewick").replace("name: Brindlewick", "name: Finchcote", 1), encoding="utf-8"
    )
    expect(phone.locator("h1")).to_have_text("Finchcote", timeout=SLOW)  # its socket lives
    phone.goto(f"{app.phones}/new")
    expect(phone.locator("main")).to_contain_text("done on the computer")
    assert violations(phone) == []
    assert violations(computer) == []
    assert not any(each.startswith(("http", "ws")) and SECOND not in each for each in elsewhere)
