package ui

import (
	"time"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"toewright/app/store"
)

// copying keeps the copy on disk of what is kept. The zero copying has none.
type copying struct {
	noted   *store.Noted
	copy    store.Copy
	writing int // writes that are on their way
}

// copyPatience is how long a start waits for the copy: a browser whose disk does not
// answer is no reason to show nothing.
const copyPatience = 3 * time.Second

// of returns a storage that is s, with its changes noted for the copy.
func (c *copying) of(s store.Storage, copy store.Copy) store.Storage {
	if copy == nil {
		return s
	}
	c.noted, c.copy = &store.Noted{Storage: s}, copy
	return c.noted
}

// recover brings back what the browser has lost since the copy was written, and then
// begins, once.
func (c *copying) recover(ctx app.Context, p *Panels, begin func(app.Context)) {
	if c.copy == nil {
		begin(ctx)
		return
	}
	begun := false
	once := func(ctx app.Context) {
		if !begun {
			begun = true
			begin(ctx)
		}
	}
	c.copy.Read(func(copied map[string]string, err error) {
		ctx.Dispatch(func(ctx app.Context) {
			if err == nil && !begun {
				// Without room, or where the browser denies its storage, the study opens as far
				// as it is there; the next save says what to do.
				_, _ = store.Recover(c.noted.Storage, copied)
			}
			once(ctx)
		})
	})
	p.after(copyPatience, once)
}

// flush writes what has changed to the copy.
func (c *copying) flush(ctx app.Context) {
	if c.copy == nil {
		return
	}
	changes := c.noted.Take()
	if len(changes) == 0 {
		return
	}
	c.writing++
	// Where the copy cannot be written the browser keeps the study all the same.
	c.copy.Write(changes, func(error) { ctx.Dispatch(func(app.Context) { c.writing-- }) })
}
