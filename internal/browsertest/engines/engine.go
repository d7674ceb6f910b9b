package engines

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
)

// startTimeout is how long a browser may take to come up. On busy cores ten seconds are usual.
const startTimeout = 2 * time.Minute

// pollInterval is the time between two looks at something that is waited for.
const pollInterval = 50 * time.Millisecond

// Options say how a browser is started.
type Options struct {
	Dark bool // the reader prefers a dark page
}

// Engine is one that a browser can be had of.
type Engine struct {
	Name    string
	Program string // that has to be installed
	Package string // of Debian that has it
	start   func(ctx context.Context, o Options, dir string) (remote, error)
}

// All are the engines, by the names of their browsers.
var All = []Engine{
	{"Firefox", "firefox-esr", "firefox-esr", startFirefox},
	{"WebKit", "WebKitWebDriver", "webkit2gtk-driver", startWebKit},
	{"Chromium", "chromedriver", "chromium-driver", startChromium},
}

// Missing returns what is to be installed for the engine, or nothing if it is there.
func (e Engine) Missing() string {
	for program, packet := range map[string]string{e.Program: e.Package, "Xvfb": "xvfb"} {
		if _, err := exec.LookPath(program); err != nil && (program != "Xvfb" || e.Name == "WebKit") {
			return packet
		}
	}
	return ""
}

// Start starts a browser of the engine, with a profile of its own.
func (e Engine) Start(o Options) (*Session, error) {
	ctx, cancel := context.WithTimeout(context.Background(), startTimeout)
	defer cancel()
	dir, err := os.MkdirTemp("", "toewright-engine-")
	if err != nil {
		return nil, err
	}
	r, err := e.start(ctx, o, dir)
	if err != nil {
		os.RemoveAll(dir)
		return nil, fmt.Errorf("%s: %w", e.Name, err)
	}
	s := &Session{remote: r}
	if _, err := s.call(setTimeouts, parameters{"script": scriptTimeout.Milliseconds(), "pageLoad": scriptTimeout.Milliseconds()}); err != nil {
		s.Close()
		return nil, fmt.Errorf("%s: %w", e.Name, err)
	}
	return s, nil
}

// startFirefox starts Firefox without a window. Nothing but the loopback can be reached.
func startFirefox(ctx context.Context, o Options, dir string) (remote, error) {
	port, err := freePort()
	if err != nil {
		return nil, err
	}
	scheme := map[bool]int{true: 0, false: 1}[o.Dark]
	settings := fmt.Sprintf(`user_pref("marionette.port", %d);
user_pref("layout.css.prefers-color-scheme.content-override", %d);
user_pref("dom.w3c_touch_events.enabled", 1);
user_pref("network.proxy.type", 1);
user_pref("network.proxy.socks", "127.0.0.1");
user_pref("network.proxy.socks_port", 9);
user_pref("network.proxy.no_proxies_on", "127.0.0.1");
user_pref("app.update.enabled", false);
user_pref("browser.shell.checkDefaultBrowser", false);
user_pref("datareporting.policy.dataSubmissionEnabled", false);
user_pref("toolkit.telemetry.enabled", false);
`, port, scheme)
	if err := os.WriteFile(filepath.Join(dir, "user.js"), []byte(settings), 0o600); err != nil {
		return nil, err
	}
	p, err := run(dir, []string{"HOME=" + dir}, "firefox-esr", "--headless", "--marionette", "--no-remote", "--profile", dir)
	if err != nil {
		return nil, err
	}
	m, err := dialMarionette(ctx, p, port)
	if err != nil {
		p.end()
		return nil, err
	}
	if _, err := m.call(ctx, newSession, parameters{"capabilities": parameters{}}); err != nil {
		m.close()
		return nil, err
	}
	return m, nil
}

// startWebKit starts WebKitGTK's small browser on a screen of its own, which nobody sees.
func startWebKit(ctx context.Context, o Options, dir string) (remote, error) {
	theme := map[bool]string{true: "Adwaita:dark", false: "Adwaita"}[o.Dark]
	environment := []string{"HOME=" + dir, "GTK_THEME=" + theme, "NO_AT_BRIDGE=1", "WEBKIT_DISABLE_COMPOSITING_MODE=1",
		"XDG_RUNTIME_DIR=" + dir, "LIBGL_ALWAYS_SOFTWARE=1"}
	port, err := freePort()
	if err != nil {
		return nil, err
	}
	p, err := run(dir, environment, "xvfb-run", "-a", "-s", "-screen 0 1600x1200x24", "WebKitWebDriver", fmt.Sprintf("--port=%d", port))
	if err != nil {
		return nil, err
	}
	capabilities := parameters{"webkitgtk:browserOptions": parameters{"args": []string{"--automation"}, "binary": miniBrowser()}}
	return startDriver(ctx, p, port, capabilities)
}

// miniBrowser is where Debian keeps WebKitGTK's small browser.
func miniBrowser() string {
	found, _ := filepath.Glob("/usr/lib/*/webkit2gtk-4.*/MiniBrowser") // The pattern is valid.
	if len(found) == 0 {
		return "MiniBrowser"
	}
	return found[len(found)-1]
}

// startChromium starts Chromium without a window and without a sandbox, as it will not have one as
// root: it opens only our own page.
func startChromium(ctx context.Context, o Options, dir string) (remote, error) {
	port, err := freePort()
	if err != nil {
		return nil, err
	}
	p, err := run(dir, nil, "chromedriver", fmt.Sprintf("--port=%d", port))
	if err != nil {
		return nil, err
	}
	args := []string{"--headless=new", "--no-sandbox", "--disable-gpu", "--disable-background-networking", "--user-data-dir=" + filepath.Join(dir, "profile"),
		"--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1"}
	if o.Dark {
		args = append(args, "--force-dark-mode")
	}
	return startDriver(ctx, p, port, parameters{"goog:chromeOptions": parameters{"args": args}})
}

// startDriver begins a session with a driver.
func startDriver(ctx context.Context, p *process, port int, capabilities parameters) (remote, error) {
	w, err := newWebdriver(ctx, p, port)
	if err != nil {
		p.end()
		return nil, err
	}
	answer, err := w.call(ctx, newSession, parameters{"capabilities": parameters{"alwaysMatch": capabilities}})
	if err == nil {
		err = w.begin(answer)
	}
	if err != nil {
		p.end()
		return nil, fmt.Errorf("%w: %s", err, p.said())
	}
	return w, nil
}

// wanted reports whether an engine is to be tested, and whether it has to be there.
func wanted(name string) (wanted, required bool) {
	names := os.Getenv("TOEWRIGHT_ENGINES")
	if names == "required" || names == "" {
		return true, names == "required" || os.Getenv("CI") == "true"
	}
	for _, n := range strings.Split(names, ",") {
		if strings.EqualFold(n, name) {
			return true, true
		}
	}
	return false, false
}
