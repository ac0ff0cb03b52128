//go:build !js

package main

import (
	"context"
	"testing"

	"github.com/chromedp/chromedp"
)

// chromiumIn starts a process on a profile in a folder.
func chromiumIn(t testing.TB, profile, proxy string) (context.Context, context.CancelFunc) {
	t.Helper()
	options := append(browserOptions(findBrowser(t), proxy), chromedp.UserDataDir(profile))
	return chromedp.NewExecAllocator(context.Background(), options...)
}

// common is the process in which most browsers live, and how it ends. Tests that share
// it run one after the other.
var common struct {
	process context.Context
	end     func()
}

// commonProcess starts the common process, where it does not run.
func commonProcess(t testing.TB) context.Context {
	t.Helper()
	if common.end != nil {
		select {
		case <-chromedp.FromContext(common.process).Browser.LostConnection:
			endCommon()
		default:
			return common.process
		}
	}
	profile, remove, err := scratch()
	if err != nil {
		t.Fatal(err)
	}
	allocator, stop := chromiumIn(t, profile, nowhere)
	process, cancel := chromedp.NewContext(allocator)
	common.process, common.end = process, func() {
		_ = chromedp.Cancel(process)
		cancel()
		stop()
		remove()
	}
	if err := chromedp.Do(process); err != nil {
		t.Fatal("starting the browser: ", err)
	}
	return process
}

// nowhere is the proxy of the process itself; each browser in it has its own.
const nowhere = "http://127.0.0.1:9"

// endCommon ends the common process.
func endCommon() {
	if common.end != nil {
		common.end()
		common.end = nil
	}
}
