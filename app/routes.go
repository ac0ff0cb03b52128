//go:build js && wasm && !gallery

package main

import (
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/desk"
	"coilbook/app/device"
	"coilbook/app/screen"
	"coilbook/app/store"
	"coilbook/specs"
)

// routes mounts the one shell for every path; it finds the screen itself.
func routes() {
	profiles, err := specs.Bundled()
	if err != nil {
		panic(err)
	}
	newDesk := func(post func(func())) *desk.Desk {
		return desk.New(desk.World{Open: store.Open, Now: time.Now, NewID: device.NewID, Profiles: profiles, Post: post})
	}
	app.RouteWithRegexp("^/.*$", func() app.Composer { return &screen.Shell{NewDesk: newDesk} })
}
