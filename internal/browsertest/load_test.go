package browsertest

import (
	"testing"

	"github.com/chromedp/chromedp"

	"toewright/internal/web"
)

func TestMain(m *testing.M) { Main(m) }

func TestPageWorksWithoutItsServer(t *testing.T) {
	tests := []struct {
		name    string
		options Options
	}{
		{name: "desktop"},
		{name: "phone, dark", options: Options{Width: 390, Height: 844, Touch: true, Dark: true}},
		{name: "below a path", options: Options{Web: web.Config{BasePath: "/tools/toe"}}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			page := Open(t, tt.options)
			page.WaitText("#solver", "ready")
			page.WaitOfflineReady()
			page.Shot("sheet " + tt.name)
			page.Offline()
			page.Reload()
			page.WaitText("#solver", "ready")
			page.Do(chromedp.Navigate(page.Origin() + tt.options.Web.BasePath + "/?from=home"))
			page.WaitText("#solver", "ready")
		})
	}
}
