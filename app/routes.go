//go:build js && wasm && !gallery

package main

import (
	"sync"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/desk"
	"coilbook/app/device"
	"coilbook/app/screen"
	"coilbook/app/store"
	"coilbook/engine/spec"
	"coilbook/specs"
)

// routes mounts the one shell for every path; it finds the screen itself.
func routes() {
	newDesk := func(post func(func())) *desk.Desk {
		return desk.New(desk.World{Open: store.Open, Now: time.Now, NewID: device.NewID, Profiles: profiles, Post: post})
	}
	app.RouteWithRegexp("^/.*$", func() app.Composer { return &screen.Shell{NewDesk: newDesk} })
	time.AfterFunc(afterStart, func() { profiles() })
}

// afterStart is when the first screen stands and whoever reads it has not gone far.
const afterStart = 3 * time.Second

// profiles are read after the start, which does without them, or when a session is looked
// at before that.
var profiles = sync.OnceValue(func() []spec.Profile {
	bundled, err := specs.Bundled()
	if err != nil {
		panic(err)
	}
	return bundled
})
