package wasm

import (
	"context"
	"encoding/json"
	"errors"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"testing/synctest"
	"time"
)

// settle lets all that runs in a bubble come to its end.
func settle() {
	time.Sleep(2 * time.Hour)
	synctest.Wait()
}

// countdown counts from the number in its params to zero, a second each, reporting
// what is left. Cancelled, it returns what is left as its best so far.
func countdown(ctx context.Context, params json.RawMessage, progress func(any)) (any, error) {
	var left int
	if err := json.Unmarshal(params, &left); err != nil {
		return nil, err
	}
	for ; left > 0 && ctx.Err() == nil; left-- {
		progress(left)
		time.Sleep(time.Second)
	}
	return left, nil
}

// obedient gives up when it is cancelled.
func obedient(ctx context.Context, _ json.RawMessage, _ func(any)) (any, error) {
	<-ctx.Done()
	return nil, ctx.Err()
}

// deaf does not hear of a cancel for an hour.
func deaf(context.Context, json.RawMessage, func(any)) (any, error) {
	time.Sleep(time.Hour)
	return nil, nil
}

func failing(context.Context, json.RawMessage, func(any)) (any, error) {
	return nil, errors.New("tie rod 312 mm cannot reach")
}

func unencodable(context.Context, json.RawMessage, func(any)) (any, error) {
	return func() {}, nil
}

var testHandlers = map[string]Handler{
	"countdown": countdown, "obedient": obedient, "deaf": deaf, "failing": failing, "unencodable": unencodable,
}

func TestPoolCall(t *testing.T) {
	tests := []struct {
		name, method string
		params       any
		want         string
		wantErr      string
	}{
		{name: "ping answers its params", method: MethodPing, params: []int{1, 2}, want: "[1,2]"},
		{name: "result", method: "countdown", params: 2, want: "0"},
		{name: "error of the method", method: "failing", wantErr: "tie rod 312 mm cannot reach"},
		{name: "unknown method", method: "swep", wantErr: `no method "swep"`},
		{name: "params are not JSON", method: MethodPing, params: func() {}, wantErr: "params of ping"},
		{name: "result is not JSON", method: "unencodable", wantErr: "result of unencodable"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				got, err := NewLocalPool(1, testHandlers).Call(t.Context(), tt.method, tt.params, nil)
				if string(got) != tt.want {
					t.Errorf("Call(%s) = %s, want %s", tt.method, got, tt.want)
				}
				if (tt.wantErr == "") != (err == nil) || err != nil && !strings.Contains(err.Error(), tt.wantErr) {
					t.Errorf("Call(%s) error = %v, want %q", tt.method, err, tt.wantErr)
				}
			})
		})
	}
}

func TestPoolCallUnknownMethodHasItsCode(t *testing.T) {
	_, err := NewLocalPool(1, nil).Call(t.Context(), "swep", nil, nil)
	var e *Error
	if !errors.As(err, &e) || e.Code != CodeUnknownMethod {
		t.Errorf("Call error = %#v, want an *Error of code %q", err, CodeUnknownMethod)
	}
}

func TestPoolCallReportsProgress(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		var got []string
		collect := func(v json.RawMessage) { got = append(got, string(v)) }
		if _, err := NewLocalPool(1, testHandlers).Call(t.Context(), "countdown", 3, collect); err != nil {
			t.Fatal(err)
		}
		if want := []string{"3", "2", "1"}; !slices.Equal(got, want) {
			t.Errorf("progress = %v, want %v", got, want)
		}
	})
}

func TestPoolCallCancelled(t *testing.T) {
	t.Run("keeps the best so far", func(t *testing.T) {
		synctest.Test(t, func(t *testing.T) {
			ctx, cancel := context.WithTimeout(t.Context(), 2500*time.Millisecond)
			defer cancel()
			got, err := NewLocalPool(1, testHandlers).Call(ctx, "countdown", 10, nil)
			if string(got) != "7" || err != nil {
				t.Errorf("Call = %s, %v, want 7, which is left after three seconds", got, err)
			}
		})
	})
	t.Run("is a context.Canceled", func(t *testing.T) {
		synctest.Test(t, func(t *testing.T) {
			ctx, cancel := context.WithCancel(t.Context())
			time.AfterFunc(time.Second, cancel)
			if _, err := NewLocalPool(1, testHandlers).Call(ctx, "obedient", nil, nil); !errors.Is(err, context.Canceled) {
				t.Errorf("Call error = %v, want a context.Canceled", err)
			}
		})
	})
	t.Run("before it began starts no worker", func(t *testing.T) {
		ctx, cancel := context.WithCancel(t.Context())
		cancel()
		pool := NewLocalPool(1, testHandlers)
		if _, err := pool.Call(ctx, "obedient", nil, nil); !errors.Is(err, context.Canceled) || len(pool.workers) != 0 {
			t.Errorf("Call error = %v with %d workers, want a context.Canceled and none", err, len(pool.workers))
		}
	})
}

// TestPoolEndsAWorkerThatDoesNotHear: one that has been heard of soon, one that may still be
// starting later.
func TestPoolEndsAWorkerThatDoesNotHear(t *testing.T) {
	for heard, grace := range map[bool]time.Duration{true: cancelGrace, false: startGrace} {
		t.Run(grace.String(), func(t *testing.T) { endsDeafWorker(t, heard, grace) })
	}
}

func endsDeafWorker(t *testing.T, heard bool, grace time.Duration) {
	synctest.Test(t, func(t *testing.T) {
		pool := NewLocalPool(1, testHandlers)
		if heard {
			if _, err := pool.Call(t.Context(), MethodPing, nil, nil); err != nil {
				t.Fatal(err)
			}
		}
		other := make(chan error, 1)
		go func() {
			_, err := pool.Call(t.Context(), "obedient", nil, nil)
			other <- err
		}()
		synctest.Wait()
		ctx, cancel := context.WithTimeout(t.Context(), time.Second)
		defer cancel()
		start := time.Now()
		_, err := pool.Call(ctx, "deaf", nil, nil)
		if took, want := time.Since(start), time.Second+grace; !errors.Is(err, context.DeadlineExceeded) || took != want {
			t.Errorf("Call error = %v after %v, want a DeadlineExceeded after %v", err, took, want)
		}
		if err := <-other; !errors.Is(err, ErrWorkerEnded) {
			t.Errorf("the worker's other call: error = %v, want ErrWorkerEnded", err)
		}
		if got, err := pool.Call(t.Context(), MethodPing, 1, nil); string(got) != "1" || err != nil {
			t.Errorf("Call after it = %s, %v, want 1 from a new worker", got, err)
		}
		settle()
	})
}

// crashable is a spawner of workers that can be made to crash.
type crashable struct {
	spawner
	started atomic.Int32
	failed  chan func(error) // how to crash each, in the order of their start
}

func newCrashable() *crashable {
	c := &crashable{failed: make(chan func(error), 10)}
	c.spawner = func(receive func(message), failed func(error)) (link, error) {
		c.started.Add(1)
		c.failed <- failed
		return localLink{newServer(withPing(testHandlers), localPort(receive), func() {})}, nil
	}
	return c
}

func TestPoolReplacesAWorkerThatCrashed(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		workers := newCrashable()
		pool := newPool(1, workers.spawner)
		time.AfterFunc(time.Second, func() { (<-workers.failed)(ErrWorkerEnded) })
		if _, err := pool.Call(t.Context(), "countdown", 5, nil); !errors.Is(err, ErrWorkerEnded) {
			t.Errorf("Call error = %v, want ErrWorkerEnded", err)
		}
		if got, err := pool.Call(t.Context(), MethodPing, 1, nil); string(got) != "1" || err != nil {
			t.Errorf("Call after the crash = %s, %v, want 1", got, err)
		}
		if n := workers.started.Load(); n != 2 {
			t.Errorf("workers started = %d, want 2", n)
		}
		settle()
	})
}

func TestPoolStartsWorkersAsNeeded(t *testing.T) {
	tests := []struct {
		name        string
		size, calls int
		want        int32
	}{
		{name: "none for no call", size: 2, calls: 0, want: 0},
		{name: "one for one call", size: 2, calls: 1, want: 1},
		{name: "two for two calls", size: 2, calls: 2, want: 2},
		{name: "no more than its size", size: 2, calls: 5, want: 2},
		{name: "at least one", size: 0, calls: 1, want: 1},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			synctest.Test(t, func(t *testing.T) {
				workers := newCrashable()
				pool := newPool(tt.size, workers.spawner)
				for range tt.calls {
					go pool.Call(t.Context(), "countdown", 1, nil)
					synctest.Wait()
				}
				if got := workers.started.Load(); got != tt.want {
					t.Errorf("size %d, %d calls: %d workers, want %d", tt.size, tt.calls, got, tt.want)
				}
				settle()
			})
		})
	}
}

func TestPoolUsesAnIdleWorkerAgain(t *testing.T) {
	workers := newCrashable()
	pool := newPool(4, workers.spawner)
	for range 3 {
		if _, err := pool.Call(t.Context(), MethodPing, nil, nil); err != nil {
			t.Fatal(err)
		}
	}
	if n := workers.started.Load(); n != 1 {
		t.Errorf("workers started = %d, want 1", n)
	}
}

func TestPoolCallWithoutWorkers(t *testing.T) {
	pool := newPool(1, func(func(message), func(error)) (link, error) { return nil, errors.New("no module") })
	if _, err := pool.Call(t.Context(), MethodPing, nil, nil); err == nil || !strings.Contains(err.Error(), "no module") {
		t.Errorf("Call error = %v, want the reason that no worker starts", err)
	}
}

func TestPoolClose(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		pool := NewLocalPool(1, testHandlers)
		time.AfterFunc(time.Second, pool.Close)
		if _, err := pool.Call(t.Context(), "countdown", 5, nil); !errors.Is(err, ErrWorkerEnded) {
			t.Errorf("Call error = %v, want ErrWorkerEnded", err)
		}
		settle()
	})
}
