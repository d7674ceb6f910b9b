package ui

import (
	"strings"
	"testing"
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/model"
	"toewright/app/store"
	"toewright/app/worker"
	"toewright/wasm"
)

// stage shows the panels on a desk with the demo, without a browser.
type stage struct {
	app.Compo
	panels *Panels
	desk   *model.Desk
	engine app.TestEngine
	ctx    app.Context
}

// OnPreRender stands in for the mounting that a browser does. Nothing is done later
// than at once, or never.
func (s *stage) OnPreRender(ctx app.Context) {
	s.ctx = ctx
	s.panels.OnMount(ctx)
}

func (s *stage) Render() app.UI { return app.Div().Body(s.panels) }

// studyMenu stands for the menu of the study among the panels.
const studyMenu = "study"

// onStage opens the panels on a storage and shows one of them.
func onStage(t *testing.T, storage store.Storage, panel string) *stage {
	t.Helper()
	return onStageWithCopy(t, storage, nil, panel)
}

// onStageWithCopy opens the panels on a storage that has a copy.
func onStageWithCopy(t *testing.T, storage store.Storage, copied store.Copy, panel string) *stage {
	t.Helper()
	pool := wasm.NewLocalPool(1, worker.Handlers())
	t.Cleanup(pool.Close)
	k := keepIn(storage, copied)
	s := &stage{desk: model.NewDesk(k.first()), engine: app.NewTestEngine()}
	s.panels = &Panels{Desk: s.desk, Caller: worker.Team{Pool: pool}, Kept: k, Changed: func(ctx app.Context) { ctx.Update() },
		after: func(time.Duration, func(app.Context)) {}}
	if err := s.engine.Load(s); err != nil {
		t.Fatal(err)
	}
	s.engine.ConsumeAll()
	s.do(func(ctx app.Context) { s.panels.show(ctx, panel) })
	if panel == studyMenu {
		s.do(func(app.Context) { s.panels.toggleMenu("study-menu") })
	}
	return s
}

// do does something on the page's goroutine and lets all that follows from it happen.
func (s *stage) do(f func(app.Context)) {
	s.ctx.Dispatch(f)
	s.engine.ConsumeAll()
}

// text returns what the panels show.
func (s *stage) text() string { return app.HTMLString(s.panels) }

// shows fails the test unless all texts are shown.
func (s *stage) shows(t *testing.T, texts ...string) {
	t.Helper()
	html := s.text()
	for _, text := range texts {
		if !strings.Contains(html, text) {
			t.Errorf("%q is not shown", text)
		}
	}
}
