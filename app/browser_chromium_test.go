//go:build !js

package main

import (
	"context"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// chromium is a page of Chromium; the contexts it is given descend from the
// page's own.
type chromium struct{}

func (chromium) load(ctx context.Context, url string) error {
	return chromedp.Do(ctx, chromedp.Navigate(url))
}

func (chromium) reload(ctx context.Context) error { return chromedp.Do(ctx, chromedp.Reload()) }

func (chromium) evaluate(ctx context.Context, promise string) (string, error) {
	return chromedp.Run(ctx, chromedp.Evaluate[string](promise, chromedp.EvalAwaitPromise))
}

func (chromium) tap(ctx context.Context, x, y int) error {
	return chromedp.Do(ctx, chromedp.MouseClickXY(float64(x), float64(y)))
}

func (chromium) keys(ctx context.Context, text string) error {
	return chromedp.Do(ctx, chromedp.KeyEvent(text))
}

func (chromium) size(ctx context.Context, width, height int) error {
	params := emulation.SetDeviceMetricsOverrideParams{
		Width: int64(width), Height: int64(height), DeviceScaleFactor: 2, Mobile: true,
	}
	_, err := chromedp.Call(ctx, emulation.SetDeviceMetricsOverride, params)
	return err
}

func (chromium) png(ctx context.Context) ([]byte, error) {
	return chromedp.Run(ctx, chromedp.CaptureScreenshot())
}

// end does nothing: the browser ends with the page's context.
func (chromium) end() {}
