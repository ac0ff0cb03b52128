//go:build !js

package main

import (
	"testing"
)

// The example sessions are there at a press, without a server, and open like any
// other.
func TestExamplesWithoutServer(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	b.open(h.url("sessions"))
	b.waitFor(kept)
	h.unplug()
	b.reload()
	b.waitFor(`!!document.getElementById("examples")`)
	b.shot("no-sessions")
	b.press("examples")
	b.waitFor(`document.querySelectorAll("#session-rows .session").length === 3`)
	b.shot("examples")
	b.waitFor(`[...document.querySelectorAll("#session-rows a")].some(a => a.textContent.includes("Example: workshop quad") && (a.click(), true))`)
	b.waitFor(`document.querySelector("main").textContent.includes("out of spec")`)
	b.reload()
	b.waitFor(`document.querySelector("main").textContent.includes("out of spec")`)
}
