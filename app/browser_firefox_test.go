//go:build !js

package main

import (
	"context"
	"encoding/base64"
	"encoding/json"
	"errors"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strings"
)

// firefox is a page of Firefox.
type firefox struct {
	*bidi
	page string // id of its browsing context
	stop func()
}

var bidiAddress = regexp.MustCompile(`WebDriver BiDi listening on (ws://\S+)`)

func startFirefox(b *browser, path string) (driver, error) {
	dir, remove, err := scratch()
	if err != nil {
		return nil, err
	}
	f := &firefox{stop: remove}
	if err := f.begin(b, path, dir); err != nil {
		f.stop()
		return nil, err
	}
	return f, nil
}

func (f *firefox) begin(b *browser, path, dir string) error {
	if err := os.WriteFile(filepath.Join(dir, "user.js"), []byte(firefoxSettings(b.startProxy())), 0o600); err != nil {
		return err
	}
	p, err := startProcess([]string{"HOME=" + dir}, path, "--headless", "--no-remote", "--remote-debugging-port", "0", "--profile", dir)
	if err != nil {
		return err
	}
	remove := f.stop
	f.stop = func() {
		p.stop()
		remove()
	}
	address, err := p.waitOutput(bidiAddress)
	if err != nil {
		return err
	}
	ctx, cancel := context.WithTimeout(b.ctx, patience)
	defer cancel()
	if f.bidi, err = dialBiDi(ctx, address+"/session", b.hearFirefox); err != nil {
		return err
	}
	return f.meet(ctx)
}

// meet starts the session, listens to the page, and finds the page itself.
func (f *firefox) meet(ctx context.Context) error {
	if err := f.call(ctx, "session.new", map[string]any{"capabilities": map[string]any{}}, nil); err != nil {
		return err
	}
	events := []string{"log.entryAdded", "network.beforeRequestSent"}
	if err := f.call(ctx, "session.subscribe", map[string]any{"events": events}, nil); err != nil {
		return err
	}
	var tree struct {
		Contexts []struct{ Context string }
	}
	if err := f.call(ctx, "browsingContext.getTree", map[string]any{}, &tree); err != nil {
		return err
	}
	if len(tree.Contexts) == 0 {
		return errors.New("the browser shows no page")
	}
	f.page = tree.Contexts[0].Context
	return nil
}

// firefoxSettings keeps the browser from asking and from calling home, and
// sends what leaves this machine to the proxy.
func firefoxSettings(proxy string) string {
	u, _ := url.Parse(proxy)
	settings := map[string]any{
		"network.proxy.type": 1, "network.proxy.no_proxies_on": "127.0.0.1",
		"network.proxy.http": u.Hostname(), "network.proxy.http_port": json.Number(u.Port()),
		"network.proxy.ssl": u.Hostname(), "network.proxy.ssl_port": json.Number(u.Port()),
		"app.update.disabledForTesting": true, "app.normandy.enabled": false,
		"browser.shell.checkDefaultBrowser": false, "browser.safebrowsing.malware.enabled": false,
		"browser.safebrowsing.phishing.enabled": false, "browser.region.network.url": "",
		"datareporting.policy.dataSubmissionEnabled": false, "dom.push.connection.enabled": false,
		"network.captive-portal-service.enabled": false, "network.connectivity-service.enabled": false,
		"services.settings.server": "data:,none", "extensions.update.enabled": false,
		"intl.accept_languages": "en-GB", "ui.useOverlayScrollbars": 1,
	}
	var out strings.Builder
	for name, value := range settings {
		text, _ := json.Marshal(value)
		fmt.Fprintf(&out, "user_pref(%q, %s);\n", name, text)
	}
	return out.String()
}

// hearFirefox takes what the page writes, throws and asks for.
func (b *browser) hearFirefox(method string, params json.RawMessage) {
	var e struct {
		Type, Level, Text string
		Request           struct{ URL string }
	}
	if json.Unmarshal(params, &e) != nil {
		return
	}
	switch {
	case method == "network.beforeRequestSent":
		b.requested(e.Request.URL)
	case e.Type == "javascript" && e.Level == "error":
		b.threw(e.Text)
	default:
		b.wrote(e.Text)
	}
}

func (f *firefox) load(ctx context.Context, url string) error {
	return f.call(ctx, "browsingContext.navigate", map[string]any{"context": f.page, "url": url, "wait": "complete"}, nil)
}

func (f *firefox) reload(ctx context.Context) error {
	return f.call(ctx, "browsingContext.reload", map[string]any{"context": f.page, "wait": "complete"}, nil)
}

func (f *firefox) evaluate(ctx context.Context, promise string) (string, error) {
	var answer struct {
		Type   string
		Result struct {
			Type  string
			Value json.RawMessage
		}
		ExceptionDetails struct{ Text string }
	}
	err := f.call(ctx, "script.evaluate", map[string]any{
		"expression": promise, "awaitPromise": true, "target": map[string]any{"context": f.page},
	}, &answer)
	if err != nil {
		return "", err
	}
	if answer.Type != "success" || answer.Result.Type != "string" {
		return "", fmt.Errorf("%s %s", answer.ExceptionDetails.Text, answer.Result.Type)
	}
	var text string
	return text, json.Unmarshal(answer.Result.Value, &text)
}

func (f *firefox) tap(ctx context.Context, x, y int) error { return f.act(ctx, tapActions(x, y)) }

func (f *firefox) keys(ctx context.Context, text string) error { return f.act(ctx, keyActions(text)) }

func (f *firefox) act(ctx context.Context, actions []any) error {
	return f.call(ctx, "input.performActions", map[string]any{"context": f.page, "actions": actions}, nil)
}

func (f *firefox) size(ctx context.Context, width, height int) error {
	return f.call(ctx, "browsingContext.setViewport", map[string]any{
		"context": f.page, "viewport": map[string]any{"width": width, "height": height}, "devicePixelRatio": 2,
	}, nil)
}

func (f *firefox) png(ctx context.Context) ([]byte, error) {
	var shot struct{ Data string }
	if err := f.call(ctx, "browsingContext.captureScreenshot", map[string]any{"context": f.page}, &shot); err != nil {
		return nil, err
	}
	return base64.StdEncoding.DecodeString(shot.Data)
}

func (f *firefox) end() {
	_ = f.socket.CloseNow()
	f.stop()
}
