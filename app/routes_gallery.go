//go:build js && wasm && gallery

package main

import (
	"context"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"coilbook/app/desk"
	"coilbook/app/device"
	"coilbook/app/screen"
	"coilbook/app/store"
	"coilbook/engine/spec"
	"coilbook/specs"
)

// routes mounts the gallery for every path. Nothing is kept on the device.
func routes() {
	profiles, err := specs.Bundled()
	if err != nil {
		panic(err)
	}
	newDesk := func(post func(func()), empty bool) *desk.Desk {
		return desk.New(desk.World{Open: hung(empty), Now: time.Now, NewID: device.NewID, Profiles: func() []spec.Profile { return profiles }, Post: post})
	}
	app.RouteWithRegexp("^/.*$", func() app.Composer { return &screen.Gallery{NewDesk: newDesk} })
}

// hung opens a store with the fixed records, or with none, that passes for the
// device's.
func hung(empty bool) func(context.Context) (store.Store, store.Where, error) {
	return func(ctx context.Context) (store.Store, store.Where, error) {
		st := &store.Memory{}
		if empty {
			return st, store.OnDevice, nil
		}
		for _, s := range screen.GalleryRecords() {
			if err := st.Append(ctx, s.ID, s.Entries...); err != nil {
				return st, store.MemoryOnly, err
			}
		}
		return st, store.OnDevice, nil
	}
}
