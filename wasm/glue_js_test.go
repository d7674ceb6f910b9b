package wasm

import (
	"context"
	"encoding/json"
	"errors"
	"syscall/js"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// spin computes without a rest until it is cancelled, reporting on the way. Only
// the yields of its context let the cancel through.
func spin(ctx context.Context, _ json.RawMessage, progress func(any)) (any, error) {
	turns := 0
	for ctx.Err() == nil {
		turns++
		progress(turns)
	}
	return turns, nil
}

// portLink is the page's end of a channel whose other end is served here.
type portLink struct{ jsPort }

func (l portLink) end() { l.value.Call("close") }

// newChannelPool returns a pool whose one worker is behind a real MessageChannel.
func newChannelPool(handlers map[string]Handler) *Pool {
	return newPool(1, func(receive func(message), _ func(error)) (link, error) {
		channel := js.Global().Get("MessageChannel").New()
		serve(jsPort{channel.Get("port2")}, handlers)
		page := portLink{jsPort{channel.Get("port1")}}
		page.listen(receive)
		return page, nil
	})
}

func TestCallOverAMessageChannel(t *testing.T) {
	pool := newChannelPool(nil)
	defer pool.Close()
	got, err := pool.Call(t.Context(), MethodPing, "Grüße, 3°", nil)
	if string(got) != `"Grüße, 3°"` || err != nil {
		t.Errorf("Call = %s, %v, want the text unharmed", got, err)
	}
}

func TestCancelReachesAMethodThatComputes(t *testing.T) {
	pool := newChannelPool(map[string]Handler{"spin": spin})
	defer pool.Close()
	ctx, cancel := context.WithCancel(t.Context())
	reports := 0
	got, err := pool.Call(ctx, "spin", nil, func(json.RawMessage) {
		if reports++; reports == 2 {
			cancel()
		}
	})
	if err != nil || string(got) == "0" || reports < 2 {
		t.Errorf("Call = %s, %v after %d reports, want its turns so far after at least 2", got, err, reports)
	}
}

func TestErrorOverAMessageChannel(t *testing.T) {
	pool := newChannelPool(nil)
	defer pool.Close()
	_, err := pool.Call(t.Context(), "swep", nil, nil)
	var e *Error
	if !errors.As(err, &e) || e.Code != CodeUnknownMethod || e.Text == "" {
		t.Errorf("Call error = %#v, want an *Error of code %q with a text", err, CodeUnknownMethod)
	}
}

func TestDecodeIsTheInverseOfEncode(t *testing.T) {
	for _, m := range []message{
		{ID: 1, Kind: kindCall, Method: "sweep", Body: json.RawMessage(`{"steer":3}`)},
		{ID: 2, Kind: kindCancel},
		{ID: 3, Kind: kindProgress, Body: json.RawMessage(`0.5`)},
		{ID: 4, Kind: kindError, Code: CodeCancelled, Text: "context canceled"},
	} {
		object, transfer := encode(m)
		if diff := cmp.Diff(m, decode(object)); diff != "" {
			t.Errorf("decode(encode(%v)) (-want +got):\n%s", m, diff)
		}
		if got, want := transfer.Length() == 1, m.Body != nil; got != want {
			t.Errorf("encode(%v) hands a buffer over: %v, want %v", m, got, want)
		}
	}
}

func TestDecodeOfForeignObjects(t *testing.T) {
	tests := []struct {
		name   string
		object map[string]any
		want   message
	}{
		{name: "empty", object: map[string]any{}, want: message{}},
		{name: "body as text", object: map[string]any{"id": 1, "body": "[2]"}, want: message{ID: 1, Body: json.RawMessage("[2]")}},
		{name: "wrong types", object: map[string]any{"id": "1", "kind": 2, "body": true}, want: message{}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if diff := cmp.Diff(tt.want, decode(js.ValueOf(tt.object))); diff != "" {
				t.Errorf("decode (-want +got):\n%s", diff)
			}
		})
	}
}

func TestSpawnWorkerWithoutBootScript(t *testing.T) {
	if _, err := spawnWorker(func(message) {}, func(error) {}); err == nil {
		t.Error("spawnWorker without boot.js gave no error")
	}
}
