package browsertest

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"time"

	"github.com/chromedp/chromedp"

	"toewright/internal/web"
)

// shared is the browser of the test process, started by [Main].
var shared *browser

// names are what the browser is called on the systems we know.
var names = []string{"chromium", "chromium-browser", "google-chrome", "chrome"}

// startTimeout is how long the browser may take to come up. On two busy cores
// five seconds are usual.
const startTimeout = time.Minute

// browser is a running Chromium.
type browser struct {
	ctx  context.Context
	stop func()
}

// start starts a browser of a new profile, or returns an error that says what is
// missing.
func start() (*browser, error) {
	if !web.Built() {
		return nil, errors.New("the page has not been built; run make test-browser")
	}
	profile, err := os.MkdirTemp("", "toewright-browser-")
	if err != nil {
		return nil, err
	}
	b, err := launch(profile)
	if err != nil {
		os.RemoveAll(profile)
		return nil, err
	}
	stop := b.stop
	b.stop = func() {
		stop()
		os.RemoveAll(profile)
	}
	return b, nil
}

// launch starts a browser of the profile in a folder.
func launch(profile string) (*browser, error) {
	path, err := find()
	if err != nil {
		return nil, err
	}
	allocator, cancel := chromedp.NewExecAllocator(context.Background(), options(path, profile)...)
	ctx, cancelBrowser := chromedp.NewContext(allocator)
	stop := func() {
		cancelBrowser()
		cancel()
	}
	// The browser's life hangs on the context of the first Do: it must have no
	// deadline, so the deadline stops it from outside.
	late := time.AfterFunc(startTimeout, cancel)
	defer late.Stop()
	if err := chromedp.Do(ctx); err != nil {
		stop()
		return nil, fmt.Errorf("%s did not start: %w", path, err)
	}
	return &browser{ctx, stop}, nil
}

// kill ends the browser at once, as a crash or a power cut of the program does.
func (b *browser) kill() error {
	process := chromedp.FromContext(b.ctx).Browser.Process()
	if err := process.Kill(); err != nil {
		return err
	}
	b.stop()
	return nil
}

// find returns the path of the browser.
func find() (string, error) {
	candidates := names
	if name := os.Getenv("CHROMIUM"); name != "" {
		candidates = []string{name}
	}
	for _, name := range candidates {
		if path, err := exec.LookPath(name); err == nil {
			return path, nil
		}
	}
	return "", fmt.Errorf("found none of the browsers %q; on Debian: apt-get install chromium", candidates)
}

// reboundName is a name of nobody's that the browser finds at the loopback.
const reboundName = "rebound.example"

// options returns the browser's command line. Nothing but the loopback can be
// reached, and the browser has no sandbox, as it will not have one as root: it
// opens only our own page.
func options(path, profile string) []chromedp.ExecAllocatorOption {
	return append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path),
		chromedp.UserDataDir(profile),
		chromedp.NoSandbox,
		chromedp.DisableGPU,
		chromedp.Flag("disable-quic", true),
		chromedp.Flag("disable-component-update", true),
		chromedp.Flag("host-resolver-rules", "MAP "+reboundName+" 127.0.0.1, MAP * ~NOTFOUND, EXCLUDE 127.0.0.1"),
	)
}
