"""Readiness: bar -> evidence -> estimate -> finding -> standing -> forecast -> plan. Pure; see docs/method.md."""
