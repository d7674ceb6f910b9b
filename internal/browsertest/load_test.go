package browsertest

import "testing"

func TestMain(m *testing.M) { Main(m) }

func TestPageWorksWithoutItsServer(t *testing.T) {
	page := Open(t, Options{})
	page.WaitText("#solver", "ready")
	page.WaitOfflineReady()
	page.Shot("sheet")
	page.Offline()
	page.Reload()
	page.WaitText("#solver", "ready")
}
