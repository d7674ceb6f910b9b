package wasm

import (
	"context"
	"encoding/json"
	"testing"
	"testing/synctest"
	"time"

	"github.com/google/go-cmp/cmp"
)

// record is a port that keeps what is posted.
type record struct{ messages chan message }

func newRecord() record { return record{make(chan message, 100)} }

func (r record) post(m message) { r.messages <- m }

func (r record) all() []message {
	close(r.messages)
	var all []message
	for m := range r.messages {
		all = append(all, m)
	}
	return all
}

// chatter reports every 20 ms for a fifth of a second.
func chatter(_ context.Context, _ json.RawMessage, progress func(any)) (any, error) {
	for i := range 10 {
		progress(i)
		time.Sleep(20 * time.Millisecond)
	}
	return "done", nil
}

// bulk answers with bytes that are no JSON.
func bulk(context.Context, json.RawMessage, func(any)) (any, error) {
	return Bytes("\xff\x00\x01"), nil
}

func TestServerAnswers(t *testing.T) {
	handlers := map[string]Handler{"chatter": chatter, "obedient": obedient, "bulk": bulk}
	call := func(id int, method string) message { return message{ID: id, Kind: kindCall, Method: method} }
	tests := []struct {
		name string
		in   []message
		want []message
	}{
		{
			name: "progress is thinned to one in 50 ms",
			in:   []message{call(7, "chatter")},
			want: []message{
				{ID: 7, Kind: kindProgress, Body: json.RawMessage("0")},
				{ID: 7, Kind: kindProgress, Body: json.RawMessage("3")},
				{ID: 7, Kind: kindProgress, Body: json.RawMessage("6")},
				{ID: 7, Kind: kindProgress, Body: json.RawMessage("9")},
				{ID: 7, Kind: kindResult, Body: json.RawMessage(`"done"`)},
			},
		},
		{
			name: "bytes are sent as they are",
			in:   []message{call(2, "bulk")},
			want: []message{{ID: 2, Kind: kindResult, Body: json.RawMessage("\xff\x00\x01")}},
		},
		{
			name: "cancel",
			in:   []message{call(1, "obedient"), {ID: 1, Kind: kindCancel}},
			want: []message{{ID: 1, Kind: kindError, Code: CodeCancelled, Text: "context canceled"}},
		},
		{
			name: "cancel of what is not running",
			in:   []message{{ID: 1, Kind: kindCancel}},
		},
		{
			name: "id in use",
			in:   []message{call(1, "obedient"), call(1, "chatter"), {ID: 1, Kind: kindCancel}},
			want: []message{
				{ID: 1, Kind: kindError, Text: "wasm: call 1 is running already"},
				{ID: 1, Kind: kindError, Code: CodeCancelled, Text: "context canceled"},
			},
		},
		{
			name: "id free again",
			in:   []message{call(1, "obedient"), {ID: 1, Kind: kindCancel}, call(1, "obedient"), {ID: 1, Kind: kindCancel}},
			want: []message{
				{ID: 1, Kind: kindError, Code: CodeCancelled, Text: "context canceled"},
				{ID: 1, Kind: kindError, Code: CodeCancelled, Text: "context canceled"},
			},
		},
		{
			name: "kind of the other direction",
			in:   []message{{ID: 3, Kind: kindResult}},
			want: []message{{ID: 3, Kind: kindError, Text: `wasm: kind "result" is not for a worker`}},
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				out := newRecord()
				s := newServer(handlers, out, func() {})
				for _, m := range tt.in {
					s.receive(m)
					synctest.Wait()
				}
				settle()
				if diff := cmp.Diff(tt.want, out.all()); diff != "" {
					t.Errorf("answers (-want +got):\n%s", diff)
				}
			})
		})
	}
}

func TestServerYieldsWhileAMethodAsksWhetherToStop(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		const asks = 100 // at one in a millisecond, so three yields of 30 ms
		busy := func(ctx context.Context, _ json.RawMessage, _ func(any)) (any, error) {
			for range asks {
				time.Sleep(time.Millisecond)
				if err := ctx.Err(); err != nil {
					return nil, err
				}
			}
			return nil, nil
		}
		yields := 0
		s := newServer(map[string]Handler{"busy": busy}, newRecord(), func() { yields++ })
		s.receive(message{ID: 1, Kind: kindCall, Method: "busy"})
		settle()
		if yields != 3 {
			t.Errorf("yields in %d ms = %d, want 3", asks, yields)
		}
	})
}
