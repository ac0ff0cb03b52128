//go:build !js

package main

import (
	"context"
	"encoding/base64"
	"fmt"
	"net"
	"net/http"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"time"
)

// webKit is a page of WebKitGTK's small browser, which needs a screen, if only
// one that nobody sees.
type webKit struct {
	webDriver
	b    *browser
	stop []func()
}

func startWebKit(b *browser, path string) (driver, error) {
	w := &webKit{b: b}
	if err := w.begin(b.ctx, path); err != nil {
		w.release()
		return nil, err
	}
	return w, nil
}

var displayNumber = regexp.MustCompile(`(?m)^(\d+)$`)

func (w *webKit) begin(ctx context.Context, path string) error {
	dir, remove, err := scratch()
	if err != nil {
		return err
	}
	w.stop = append(w.stop, remove)
	if err := narrowed(dir); err != nil {
		return err
	}
	screen, err := w.run(nil, "Xvfb", "-displayfd", "1", "-screen", "0", "1280x2400x24", "-nolisten", "tcp")
	if err != nil {
		return err
	}
	display, err := screen.waitOutput(displayNumber)
	if err != nil {
		return err
	}
	port, err := freePort()
	if err != nil {
		return err
	}
	env := []string{
		"DISPLAY=:" + display, "HOME=" + dir, "XDG_RUNTIME_DIR=" + dir, "LANG=C.UTF-8", "LANGUAGE=en_GB",
		"GDK_BACKEND=x11", "GDK_SCALE=2", "NO_AT_BRIDGE=1", "LIBGL_ALWAYS_SOFTWARE=1",
	}
	if _, err := w.run(env, "dbus-run-session", "--", "WebKitWebDriver", "--host=127.0.0.1", "--port="+port); err != nil {
		return err
	}
	w.address = "http://127.0.0.1:" + port
	return w.meet(ctx, path)
}

// narrowed lets the browser's own buttons shrink, which would hold its window wider
// than a phone.
func narrowed(home string) error {
	style := filepath.Join(home, ".config", "gtk-3.0", "gtk.css")
	if err := os.MkdirAll(filepath.Dir(style), 0o700); err != nil {
		return err
	}
	return os.WriteFile(style, []byte(`* { font-size: 1px; min-width: 0; min-height: 0; padding: 0; margin: 0; border-width: 0; -gtk-icon-transform: scale(0.1) }
image { -gtk-icon-size: 1px }
`), 0o600)
}

func (w *webKit) run(env []string, program string, args ...string) (*process, error) {
	if _, err := exec.LookPath(program); err != nil {
		return nil, err
	}
	p, err := startProcess(env, program, args...)
	if err == nil {
		w.stop = append(w.stop, p.stop)
	}
	return p, err
}

func freePort() (string, error) {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return "", err
	}
	_, port, err := net.SplitHostPort(listener.Addr().String())
	_ = listener.Close()
	return port, err
}

// meet waits for the driver and starts the browser's session.
func (w *webKit) meet(ctx context.Context, path string) error {
	ctx, cancel := context.WithTimeout(ctx, patience)
	defer cancel()
	for w.call(ctx, http.MethodGet, "/status", nil, nil) != nil {
		if ctx.Err() != nil {
			return fmt.Errorf("waiting for WebKitWebDriver: %w", ctx.Err())
		}
		time.Sleep(50 * time.Millisecond)
	}
	proxy := strings.TrimPrefix(w.b.startProxy(), "http://")
	capabilities := map[string]any{
		"webkitgtk:browserOptions": map[string]any{"binary": path, "args": []string{"--automation"}},
		"proxy":                    map[string]any{"proxyType": "manual", "httpProxy": proxy, "sslProxy": proxy, "noProxy": []string{"127.0.0.1"}},
		// A script that waits for a page that has gone would wait for ever.
		"timeouts": map[string]any{"script": 5000, "pageLoad": patience.Milliseconds()},
	}
	var session struct{ SessionID string }
	err := w.call(ctx, http.MethodPost, "/session", map[string]any{"capabilities": map[string]any{"alwaysMatch": capabilities}}, &session)
	w.address += "/session/" + url.PathEscape(session.SessionID)
	return err
}

func (w *webKit) load(ctx context.Context, url string) error {
	w.gather(ctx)
	if err := w.call(ctx, http.MethodPost, "/url", map[string]any{"url": url}, nil); err != nil {
		return err
	}
	w.watch(ctx)
	return nil
}

func (w *webKit) reload(ctx context.Context) error {
	w.gather(ctx)
	if err := w.call(ctx, http.MethodPost, "/refresh", map[string]any{}, nil); err != nil {
		return err
	}
	w.watch(ctx)
	return nil
}

// watch has the page keep what nothing catches; the protocol has no word for it.
func (w *webKit) watch(ctx context.Context) {
	_, _ = w.evaluate(ctx, `(async () => {
		globalThis.uncaught = [];
		addEventListener("error", e => uncaught.push(String(e.message)));
		addEventListener("unhandledrejection", e => uncaught.push(String(e.reason)));
		return "" })()`)
}

// gather takes what the page has kept, before the page goes.
func (w *webKit) gather(ctx context.Context) {
	text, err := w.evaluate(ctx, `(async () => (globalThis.uncaught || []).join("\n"))()`)
	if err == nil && text != "" {
		w.b.threw(text)
	}
}

func (w *webKit) evaluate(ctx context.Context, promise string) (string, error) {
	var answer struct{ Text, Problem string }
	err := w.call(ctx, http.MethodPost, "/execute/async", map[string]any{
		"script": `const tell = arguments[0];
			Promise.resolve().then(() => ` + promise + `).then(text => tell({ text }), e => tell({ problem: String(e) }))`,
		"args": []any{},
	}, &answer)
	if err == nil && answer.Problem != "" {
		err = fmt.Errorf("%s", answer.Problem)
	}
	return answer.Text, err
}

func (w *webKit) tap(ctx context.Context, x, y int) error { return w.act(ctx, tapActions(x, y)) }

func (w *webKit) keys(ctx context.Context, text string) error { return w.act(ctx, keyActions(text)) }

func (w *webKit) act(ctx context.Context, actions []any) error {
	return w.call(ctx, http.MethodPost, "/actions", map[string]any{"actions": actions}, nil)
}

// size sets the window so large that the page in it has the size.
func (w *webKit) size(ctx context.Context, width, height int) error {
	outer := []int{width, height}
	for range 5 {
		if err := w.call(ctx, http.MethodPost, "/window/rect", map[string]any{"width": outer[0], "height": outer[1]}, nil); err != nil {
			return err
		}
		time.Sleep(100 * time.Millisecond)
		var inner [2]int
		if err := w.call(ctx, http.MethodPost, "/execute/sync", map[string]any{
			"script": `return [innerWidth, innerHeight]`, "args": []any{},
		}, &inner); err != nil {
			return err
		}
		if inner == [2]int{width, height} {
			return nil
		}
		outer[0] += width - inner[0]
		outer[1] += height - inner[1]
	}
	return fmt.Errorf("the window cannot hold a page of %d by %d", width, height)
}

func (w *webKit) png(ctx context.Context) ([]byte, error) {
	var shot string
	if err := w.call(ctx, http.MethodGet, "/screenshot", nil, &shot); err != nil {
		return nil, err
	}
	return base64.StdEncoding.DecodeString(shot)
}

func (w *webKit) end() {
	ctx, cancel := context.WithTimeout(context.Background(), 5*time.Second)
	defer cancel()
	w.gather(ctx)
	_ = w.call(ctx, http.MethodDelete, "", nil, nil)
	w.release()
}

// release ends what was started, the latest first.
func (w *webKit) release() {
	for i := len(w.stop) - 1; i >= 0; i-- {
		w.stop[i]()
	}
}
