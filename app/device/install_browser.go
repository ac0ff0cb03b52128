//go:build js && wasm

package device

import (
	"strings"
	"syscall/js"
)

// HowToInstall is the way in which this browser puts the app on the home screen.
func HowToInstall() Install {
	switch {
	case standalone():
		return Installed
	case window().Get("coilbookInstall").Truthy():
		return AskBrowser
	case onIPhone():
		return ByShareMenu
	}
	return NoWay
}

// OnInstallChange calls tell when that may have changed: the browser offers to
// install some time after the page came.
func OnInstallChange(tell func()) {
	listen(window(), "coilbook-install", tell)
	listen(window(), "appinstalled", tell)
}

// AskInstall has the browser ask the user, which it does once for each of its
// offers, and calls answered with what the user said.
func AskInstall(answered func(accepted bool)) {
	offer := window().Get("coilbookInstall")
	if !offer.Truthy() {
		answered(false)
		return
	}
	window().Set("coilbookInstall", js.Null())
	ignore(offer.Call("prompt"))
	thenOr(offer.Get("userChoice"), func(v js.Value) {
		answered(v.Get("outcome").String() == "accepted")
	}, func() { answered(false) })
}

// standalone reports whether the app was opened from the home screen.
func standalone() bool {
	for _, mode := range []string{"standalone", "fullscreen", "minimal-ui"} {
		if window().Call("matchMedia", "(display-mode: "+mode+")").Get("matches").Truthy() {
			return true
		}
	}
	return window().Get("navigator").Get("standalone").Truthy()
}

// onIPhone reports Safari on an iPhone or iPad. An iPad passes for a Mac, but no
// Mac is touched with several fingers; other browsers there name themselves.
func onIPhone() bool {
	n := window().Get("navigator")
	agent := n.Get("userAgent").String()
	small := strings.Contains(agent, "iPhone") || strings.Contains(agent, "iPad") || strings.Contains(agent, "iPod") ||
		strings.Contains(agent, "Macintosh") && n.Get("maxTouchPoints").Int() > 1
	return small && strings.Contains(agent, "Safari/") && !strings.Contains(agent, "CriOS") && !strings.Contains(agent, "FxiOS") && !strings.Contains(agent, "EdgiOS")
}
