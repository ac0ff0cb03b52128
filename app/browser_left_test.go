//go:build !js

package main

import (
	"testing"

	"github.com/chromedp/cdproto/page"
)

// A page that is left while its storage is still being opened must not keep the
// next one from its own.
func TestLeftWhileOpening(t *testing.T) {
	h := startSite(t, "/", siteFiles(t, "/", "one"))
	b := newBrowser(t)
	call(b, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: `
		if (location.pathname === "/") {
			const open = IDBFactory.prototype.open; // one that is never done
			IDBFactory.prototype.open = function (...args) {
				const request = open.apply(this, args);
				request.addEventListener("upgradeneeded", () => {
					const table = request.result.createObjectStore("spin");
					const spin = () => { table.count().onsuccess = spin };
					spin() });
				return request } }`})
	b.open(h.url(""))
	b.waitFor(kept)
	b.open(h.url("sessions"))
	b.waitSaved()
}
