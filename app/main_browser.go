//go:build js && wasm

// Command coilbook is the app; this is its build for the browser.
package main

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/device"
)

func main() {
	defer showCrash()
	device.Pause()
	routes()
	device.Pause()
	app.RunWhenOnBrowser()
}

// showCrash puts a screen with a way out over a dead page. It blocks, because
// events of a program that has ended would only raise errors on top.
func showCrash() {
	if reason := recover(); reason != nil {
		app.Window().Call("coilbookCrash", fmt.Sprint(reason))
		select {}
	}
}
