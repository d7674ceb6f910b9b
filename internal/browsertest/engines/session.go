package engines

import (
	"context"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"time"
)

// scriptTimeout bounds a command, and what is waited for.
const scriptTimeout = 90 * time.Second

// Session is a browser with a page.
type Session struct{ remote remote }

// call has a command done within the time that one may take.
func (s *Session) call(c command, p parameters) (json.RawMessage, error) {
	ctx, cancel := context.WithTimeout(context.Background(), scriptTimeout)
	defer cancel()
	v, err := s.remote.call(ctx, c, p)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", c.marionette, err)
	}
	return v, nil
}

// Close ends the browser.
func (s *Session) Close() { s.remote.close() }

// Open opens an address.
func (s *Session) Open(url string) error {
	_, err := s.call(navigate, parameters{"url": url})
	return err
}

// Size sets what the page has for its width and height, in CSS pixels, as near as a browser with
// a window comes to it.
func (s *Session) Size(width, height int) error {
	outer := [2]int{width, height}
	for range 2 { // The second time the window's own frame is known.
		if _, err := s.call(setWindow, parameters{"x": 0, "y": 0, "width": outer[0], "height": outer[1]}); err != nil {
			return err
		}
		inner, err := Value[[2]int](s, "[innerWidth, innerHeight]")
		if err != nil {
			return err
		}
		outer[0] += width - inner[0]
		outer[1] += height - inner[1]
	}
	return nil
}

// Value returns what an expression of the page comes to. A promise is waited for.
func Value[T any](s *Session, expression string) (T, error) { return ValueAfter[T](s, "", expression) }

// ValueAfter is [Value] after a script, which the page's policy against foreign ones does not
// reach.
func ValueAfter[T any](s *Session, before, expression string) (T, error) {
	const script = `const done = arguments[arguments.length - 1];
(async () => (%s))().then((value) => done({ value: value ?? null }), (error) => done({ error: String(error) }));`
	var answer struct {
		Value T
		Error string
	}
	v, err := s.call(executeScript, parameters{"script": before + "\n" + fmt.Sprintf(script, expression), "args": []any{}})
	if err == nil {
		err = json.Unmarshal(v, &answer)
	}
	if err == nil && answer.Error != "" {
		err = fmt.Errorf("%s", answer.Error)
	}
	if err != nil {
		err = fmt.Errorf("%.200s: %w", expression, err)
	}
	return answer.Value, err
}

// Wait waits until an expression of the page is true.
func (s *Session) Wait(expression string) error {
	for until := time.Now().Add(scriptTimeout); ; time.Sleep(pollInterval) {
		ok, err := Value[bool](s, "!!("+expression+")")
		if ok {
			return nil
		}
		if time.Now().After(until) {
			return fmt.Errorf("%.200s: not within %v (%v)", expression, scriptTimeout, err)
		}
	}
}

// Point is a place of the window, in CSS pixels.
type Point struct{ X, Y float64 }

// Middle returns the middle of the first element that a CSS selector finds.
func (s *Session) Middle(selector string) (Point, error) {
	q, _ := json.Marshal(selector) // A string can be written.
	return Value[Point](s, `(() => {
		const e = document.querySelector(`+string(q)+`);
		e.scrollIntoView({ block: "nearest" });
		const r = e.getBoundingClientRect();
		return { X: r.x + r.width / 2, Y: r.y + r.height / 2 };
	})()`)
}

// Pointer is what points at the page.
type Pointer string

// What points.
const (
	Mouse Pointer = "mouse"
	Touch Pointer = "touch"
)

// Drag presses at a place, moves by x, y in steps of a frame and lifts there.
func (s *Session) Drag(pointer Pointer, from Point, x, y float64) error {
	const steps = 8
	moves := []any{moveTo(from, 0), parameters{"type": "pointerDown", "button": 0}}
	for i := 1.0; i <= steps; i++ {
		moves = append(moves, moveTo(Point{from.X + x*i/steps, from.Y + y*i/steps}, 17))
	}
	moves = append(moves, parameters{"type": "pointerUp", "button": 0})
	return s.act(parameters{"type": "pointer", "id": string(pointer), "parameters": parameters{"pointerType": string(pointer)}, "actions": moves})
}

// Click clicks the first element that a CSS selector finds.
func (s *Session) Click(selector string) error {
	at, err := s.Middle(selector)
	if err != nil {
		return err
	}
	return s.act(parameters{"type": "pointer", "id": "mouse", "parameters": parameters{"pointerType": "mouse"}, "actions": []any{
		moveTo(at, 0), parameters{"type": "pointerDown", "button": 0}, parameters{"type": "pointerUp", "button": 0}}})
}

// moveTo is a pointer's move within so many milliseconds.
func moveTo(p Point, milliseconds int) parameters {
	return parameters{"type": "pointerMove", "duration": milliseconds, "x": int(p.X + 0.5), "y": int(p.Y + 0.5)}
}

// Keys of the keyboard that have no character of their own.
const (
	Enter  = "\ue007"
	Escape = "\ue00c"
	Tab    = "\ue004"
)

// Type presses the keys of a text where the keyboard is.
func (s *Session) Type(text string) error {
	var keys []any
	for _, r := range text {
		keys = append(keys, parameters{"type": "keyDown", "value": string(r)}, parameters{"type": "keyUp", "value": string(r)})
	}
	return s.act(parameters{"type": "key", "id": "keyboard", "actions": keys})
}

// act performs actions and lets go of all keys.
func (s *Session) act(a parameters) error {
	if _, err := s.call(performActions, parameters{"actions": []any{a}}); err != nil {
		return err
	}
	_, err := s.call(releaseActions, nil)
	return err
}

// Choose gives a file to the file field that a CSS selector finds.
func (s *Session) Choose(selector, file string) error {
	v, err := s.call(findElement, parameters{"using": "css selector", "value": selector})
	if err != nil {
		return err
	}
	element := map[string]string{}
	if err := json.Unmarshal(v, &element); err != nil {
		return err
	}
	for _, id := range element { // It has one member, whose name is the protocol's.
		_, err = s.call(sendKeys(id), parameters{"id": id, "text": file})
	}
	return err
}

// Anew leaves the page and opens an address in a window of its own: a tab that nobody sees shows no frames.
func (s *Session) Anew(url string) error {
	v, err := s.call(newWindow, parameters{"type": "window"})
	if err != nil {
		return err
	}
	var window struct{ Handle string }
	if err := json.Unmarshal(v, &window); err != nil {
		return err
	}
	if _, err := s.call(switchWindow, parameters{"handle": window.Handle}); err != nil {
		return err
	}
	return s.Open(url)
}

// Shot returns a picture of the window, as PNG.
func (s *Session) Shot() ([]byte, error) { return s.file(screenshot, nil) }

// Print returns the page as it is printed, as PDF.
func (s *Session) Print() ([]byte, error) { return s.file(printPage, parameters{}) }

// file has a command done whose value is a file.
func (s *Session) file(c command, p parameters) ([]byte, error) {
	v, err := s.call(c, p)
	if err != nil {
		return nil, err
	}
	var text string
	if err := json.Unmarshal(v, &text); err != nil {
		return nil, err
	}
	return base64.StdEncoding.DecodeString(text)
}
