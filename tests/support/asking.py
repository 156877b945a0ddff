"""What a phone does when it asks the server: keeps cookies, sends JSON, and our header with every change."""

import json

PASSWORD = "rope halter seven gates"
ASKED = {"X-Fieldtally": "1"}


class Browser:
    """One browser of one server in this process; `environ` overrides what the server sees of its peer."""

    def __init__(self, app, **environ):
        self.client, self.environ = app.test_client(), environ

    def send(self, method, path, body=None, headers=ASKED):
        return self.client.open(
            path, method=method, headers=headers, environ_overrides=self.environ,
            data=None if body is None else json.dumps(body),
            content_type=None if body is None else "application/json",
        )  # fmt: skip

    def get(self, path, headers=None):
        return self.client.get(path, headers=headers, environ_overrides=self.environ)

    def sign_in(self, name, password=PASSWORD):
        return self.send("POST", "/api/session", {"sign_in_name": name, "password": password})

    def sign_out(self):
        return self.send("DELETE", "/api/session")

    def who(self):
        """The sign-in name this browser is known by, or None."""
        account = self.get("/api/session").get_json()["account"]
        return account and account["sign_in_name"]


def error_of(response):
    return response.get_json()["error"]
