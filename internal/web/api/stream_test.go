package api

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"sync"
	"testing"
	"time"

	"toewright/internal/calls"
	"toewright/internal/engine"
	"toewright/internal/study"
)

// oneLine is the saloon on one line.
func oneLine(t testing.TB) string {
	t.Helper()
	var b bytes.Buffer
	if err := json.Compact(&b, []byte(saloon)); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// postLines returns the answer to lines.
func postLines(t *testing.T, h http.Handler, path, body string) (*http.Response, []string) {
	t.Helper()
	w := httptest.NewRecorder()
	r := httptest.NewRequest(http.MethodPost, base+path, strings.NewReader(body))
	r.Header.Set("Content-Type", linesType)
	h.ServeHTTP(w, r)
	text := strings.TrimSuffix(w.Body.String(), "\n")
	return w.Result(), strings.Split(text, "\n")
}

// TestLinesAreTheSingleAnswers: each line is answered in the bytes that a call for a study
// with that car as its candidate is.
func TestLinesAreTheSingleAnswers(t *testing.T) {
	sets := []string{
		`{"changes": {"tieRodOuterHeight": -8}}`,
		`{"name": "lower", "changes": {"rideHeight": -20, "caster@left": 5}, "hold": ["toe"]}`,
		`{}`,
		`{"changes": {"tieRodOuter.z": 3.25, "tyreRadius": 300}}`,
	}
	for _, call := range []string{"sweep", "sweep?motion=roll&steer=10", "compare", "steer?lock=60", "diagnose", "axle", "covers?by=rideHeight&limit=0.2"} {
		t.Run(call, func(t *testing.T) {
			_, got := postLines(t, New(Config{}), call, oneLine(t)+"\n"+strings.Join(sets, "\n\r\n"))
			if len(got) != len(sets) {
				t.Fatalf("%d lines, want %d: %.200q", len(got), len(sets), got)
			}
			for i, set := range sets {
				d, err := study.Decode([]byte(saloon))
				if err != nil {
					t.Fatal(err)
				}
				c := study.Candidate{Name: study.ChangedName}
				if err := json.Unmarshal([]byte(set), &c); err != nil {
					t.Fatal(err)
				}
				d.Candidates = []study.Candidate{c}
				text, err := study.Encode(d)
				if err != nil {
					t.Fatal(err)
				}
				join := "?"
				if strings.Contains(call, "?") {
					join = "&"
				}
				if _, want := reply(t, New(Config{}), call+join+"candidate="+c.Name, string(text)); got[i] != want {
					t.Errorf("%s:\n%.200s, want\n%.200s", set, got[i], want)
				}
			}
		})
	}
}

// faultOfLine returns the error that a line tells.
func faultOfLine(t *testing.T, text string) fault {
	t.Helper()
	var answer struct{ Error *fault }
	if err := json.Unmarshal([]byte(text), &answer); err != nil || answer.Error == nil {
		t.Fatalf("%.200q is no error of ours (%v)", text, err)
	}
	return *answer.Error
}

// TestHostileLines: a line that cannot be answered says so by its number, and those after
// it are answered; only where no more can be read is it the last.
func TestHostileLines(t *testing.T) {
	tests := []struct {
		name, line, part string
		last             bool
	}{
		{"no JSON", `{"changes"`, "unexpected end", false},
		{"no object", `[1]`, "want an object", false},
		{"another study", oneLine(t), "unknown key", false},
		{"no such parameter", `{"changes": {"tieRodHeight": 1}}`, "is not a parameter", false},
		{"not a number", `{"changes": {"camber": "x"}}`, "want a number", false},
		{"beyond all", `{"changes": {"camber": 1e300}}`, "too large", false},
		{"far from all", `{"changes": {"caster": 80}}`, "", false},
		{"twice", `{"changes": {"camber": 1, "camber": 2}}`, "twice", false},
		{"the base car's name", `{"name": "base"}`, "give another", false},
		{"no text", "\"\xff\xfe\"", "UTF-8", false},
		{"deep", strings.Repeat("[", 10_000), "", false},
		{"long", strings.Repeat(" ", longestLine) + `{"name": "` + strings.Repeat("x", longestLine) + `"}`, "longer than", true},
	}
	const good = `{"changes": {"tieRodOuterHeight": -8}}`
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			r, got := postLines(t, New(Config{}), "sweep", oneLine(t)+"\n"+good+"\n"+tt.line+"\n"+good+"\n")
			want := 3
			if tt.last {
				want = 2
			}
			if r.StatusCode != http.StatusOK || len(got) != want {
				t.Fatalf("%d, %d lines, want %d: %.300q", r.StatusCode, len(got), want, got)
			}
			if f := faultOfLine(t, got[1]); f.Line != 3 || !strings.Contains(f.Message, tt.part) {
				t.Errorf("line %d: %s: %s, want line 3 and %q", f.Line, f.Key, f.Message, tt.part)
			}
			if !tt.last && got[2] != got[0] {
				t.Errorf("the line after it is answered by %.100q, want what the line before was", got[2])
			}
		})
	}
}

// TestLinesAreBounded: in number and in bytes.
func TestLinesAreBounded(t *testing.T) {
	s := calls.Call{Name: "quick", New: func() *calls.Request {
		var name string
		return &calls.Request{
			Options: []calls.Option{{Name: "candidate", Kind: calls.Text, Set: func(s string) error { name = s; return nil }}},
			Ask:     func(context.Context, *study.Document, func(engine.Progress)) (any, error) { return name, nil },
		}
	}}
	h := newHandler(Config{}).answer(s)
	tests := []struct {
		name, line, part string
		lines, answered  int
	}{
		{"many", "{}\n", "more than 10000 change sets", mostSets + 100, mostSets},
		{"large", `{"name": "` + strings.Repeat("x", 1000) + `"}` + "\n", "send the rest", 3000, 2070},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, got := postLines(t, h, "quick", oneLine(t)+"\n"+strings.Repeat(tt.line, tt.lines))
			if n := len(got) - 1; n > tt.answered || n < tt.answered*9/10 {
				t.Errorf("%d lines answered, want some %d", n, tt.answered)
			}
			if f := faultOfLine(t, got[len(got)-1]); !strings.Contains(f.Message, tt.part) {
				t.Errorf("the last line is %q, want %q", f.Message, tt.part)
			}
		})
	}
}

// TestFirstLineIsRefusedAsAStudyIs: before a line has gone out the status tells.
func TestFirstLineIsRefusedAsAStudyIs(t *testing.T) {
	tests := []struct {
		name, path, body string
		status           int
	}{
		{"nothing", "sweep", "", http.StatusBadRequest},
		{"blank", "sweep", "\n\n", http.StatusBadRequest},
		{"no study", "sweep", "{}\n{}\n", http.StatusBadRequest},
		{"changes beside the study", "sweep", `{"study": ` + oneLine(t) + `, "changes": {}}` + "\n", http.StatusBadRequest},
		{"unknown digest", "sweep", `{"study": {"digest": "sha256-00"}}` + "\n", http.StatusNotFound},
		{"too large", "sweep", strings.Repeat(" ", defaultMaxBody+1), http.StatusRequestEntityTooLarge},
		{"an option that is none", "sweep?depth=3", oneLine(t), http.StatusBadRequest},
		{"a candidate", "sweep?candidate=base", oneLine(t), http.StatusBadRequest},
		{"a call of no car", "search", oneLine(t), http.StatusUnsupportedMediaType},
		{"a call for a file", "report", oneLine(t), http.StatusUnsupportedMediaType},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			r, lines := postLines(t, New(Config{}), tt.path, tt.body)
			if faultOfLine(t, lines[0]); r.StatusCode != tt.status {
				t.Errorf("%d %q, want %d", r.StatusCode, lines, tt.status)
			}
		})
	}
}

// lingering serves a slow call that asks for one car, by lines.
func lingering(t *testing.T, cfg Config) (*slowCall, *handler, string) {
	t.Helper()
	s, h := newSlowCall(), newHandler(cfg)
	c := s.call()
	ask := c.New
	c.New = func() *calls.Request {
		r := ask()
		r.Options = []calls.Option{{Name: "candidate", Set: func(string) error { return nil }}}
		return r
	}
	server := httptest.NewServer(h.watched("slow", h.answer(c)))
	t.Cleanup(server.Close)
	return s, h, server.URL
}

// open begins a call whose lines are written one by one.
func open(t *testing.T, ctx context.Context, url string) (io.WriteCloser, <-chan *http.Response) {
	t.Helper()
	body, in := io.Pipe()
	r, err := http.NewRequestWithContext(ctx, http.MethodPost, url, body)
	if err != nil {
		t.Fatal(err)
	}
	r.Header.Set("Content-Type", linesType)
	got := make(chan *http.Response, 1)
	go func() {
		answer, err := http.DefaultClient.Do(r)
		if err != nil {
			body.CloseWithError(err)
			close(got)
			return
		}
		got <- answer
	}()
	io.WriteString(in, oneLine(t)+"\n")
	return in, got
}

// TestLinesAreAnsweredAsTheyCome: before the next is sent, by a client that waits for each.
func TestLinesAreAnsweredAsTheyCome(t *testing.T) {
	server := httptest.NewServer(New(Config{}))
	defer server.Close()
	in, got := open(t, t.Context(), server.URL+base+"sweep")
	answer := <-got
	lines := bufio.NewReader(answer.Body)
	for i := range 5 {
		fmt.Fprintf(in, `{"name": "%d", "changes": {"tieRodOuterHeight": %d}}`+"\n", i, -i)
		line, err := lines.ReadString('\n')
		if err != nil || !strings.Contains(line, fmt.Sprintf(`"candidate":"%d"`, i)) {
			t.Fatalf("line %d is answered by %.100q, %v", i, line, err)
		}
	}
	in.Close()
	if rest, err := io.ReadAll(lines); err != nil || len(rest) != 0 {
		t.Errorf("after the last line came %q, %v", rest, err)
	}
}

// TestLeavingEndsTheWork: within a tenth of a second, whether the caller had sent all or not.
func TestLeavingEndsTheWork(t *testing.T) {
	for _, whole := range []bool{false, true} {
		t.Run(fmt.Sprint("whole body ", whole), func(t *testing.T) {
			s, h, url := lingering(t, Config{})
			ctx, leave := context.WithCancel(t.Context())
			in, _ := open(t, ctx, url)
			io.WriteString(in, "{}\n{}\n{}\n")
			if whole {
				in.Close()
			}
			<-s.began
			time.Sleep(20 * time.Millisecond) // for the rest to be read
			left := time.Now()
			leave()
			if err := <-s.ended; err == nil {
				t.Error("the work ended without an error")
			}
			if took := time.Since(left); took > 100*time.Millisecond {
				t.Errorf("the work ended %s after its caller left", took)
			}
			await(t, "the call to end", func() bool { return h.streams.running() == 0 && h.work.running() == 0 })
		})
	}
}

// TestStoppingEndsLines: a caller who waits for more to say is told, and let go.
func TestStoppingEndsLines(t *testing.T) {
	stopping := make(chan struct{})
	server := httptest.NewServer(New(Config{Stopping: stopping}))
	defer server.Close()
	in, got := open(t, t.Context(), server.URL+base+"sweep")
	defer in.Close()
	answer := <-got
	close(stopping)
	text, err := io.ReadAll(answer.Body)
	if f := faultOfLine(t, string(text)); err != nil || !strings.Contains(f.Message, "stopping") {
		t.Errorf("%q, %v", text, err)
	}
}

// TestSlowLinesAreLetGo: who sends no line for long is told, and let go.
func TestSlowLinesAreLetGo(t *testing.T) {
	server := httptest.NewServer(New(Config{BodyTimeout: 50 * time.Millisecond, Deadline: 50 * time.Millisecond}))
	defer server.Close()
	in, got := open(t, t.Context(), server.URL+base+"sweep")
	defer in.Close()
	answer := <-got
	text, err := io.ReadAll(answer.Body)
	if f := faultOfLine(t, string(text)); err != nil || !strings.Contains(f.Message, "no whole line came") {
		t.Errorf("%q, %v", text, err)
	}
}

// TestStreamsAreBounded: too many at once are refused before they are read.
func TestStreamsAreBounded(t *testing.T) {
	s, h, url := lingering(t, Config{Streams: 1})
	in, _ := open(t, t.Context(), url)
	io.WriteString(in, "{}\n")
	<-s.began
	r, err := http.Post(url, linesType, strings.NewReader(oneLine(t)))
	if err != nil || r.StatusCode != http.StatusTooManyRequests {
		t.Errorf("a second stream: %v, %v, want 429", r, err)
	}
	close(s.release)
	in.Close()
	await(t, "the call to end", func() bool { return h.streams.running() == 0 })
}

// TestKeptStudies: a study that came, plain or in an envelope, is found by its digest, which
// is that of its text, until others have taken its room.
func TestKeptStudies(t *testing.T) {
	digest := digestOf([]byte(saloon))
	byDigest := `{"study": {"digest": "` + digest + `"}, "changes": {"tieRodOuterHeight": -8}}`
	h := New(Config{Kept: len(saloon) + 10})
	if r := post(t, h, "sweep", byDigest); r.StatusCode != http.StatusNotFound {
		t.Errorf("of a study that did not come: %d, want 404", r.StatusCode)
	} else if f := readFault(t, r); f.Key != "study.digest" || !strings.Contains(f.Message, "send the study") {
		t.Errorf("%+v", f)
	}
	_, plain := reply(t, h, "sweep", saloon)
	if status, _ := reply(t, h, "sweep", byDigest); status != http.StatusOK {
		t.Errorf("of a study that came plain: %d, want 200", status)
	}
	again := post(t, h, "sweep", "\n"+saloon+"\n")
	if text, _ := io.ReadAll(again.Body); string(text) != plain || again.Header.Get(digestHeader) != digest {
		t.Errorf("plain, once more: digest %q, want %q; the same answer: %t", again.Header.Get(digestHeader), digest, string(text) == plain)
	}
	if status, text := reply(t, h, "sweep", saloon+"\u00a0"); status != http.StatusBadRequest {
		t.Errorf("with a space behind it that is none in JSON: %d %.80s, want it refused though the study is kept", status, text)
	}
	h = New(Config{Kept: len(saloon) + 10})
	r := post(t, h, "sweep", `{ "study" : `+saloon+` }`)
	enveloped, _ := io.ReadAll(r.Body)
	if got := r.Header.Get(digestHeader); got != digest || string(enveloped) != plain {
		t.Errorf("in an envelope: digest %q, want %q; the same answer: %t", got, digest, string(enveloped) == plain)
	}
	status, kept := reply(t, h, "sweep", byDigest)
	_, want := reply(t, New(Config{}), "sweep?candidate=changed", strings.Replace(saloon, "low ball", study.ChangedName, 1))
	if status != http.StatusOK || kept != want {
		t.Errorf("by digest: %d %.200s, want %.200s", status, kept, want)
	}
	_, lines := postLines(t, h, "sweep", `{"study": {"digest": "`+digest+`"}}`+"\n"+`{"changes": {"tieRodOuterHeight": -8}}`)
	if lines[0] != want {
		t.Errorf("lines by digest: %.200s, want %.200s", lines[0], want)
	}
	post(t, h, "sweep", `{"study": `+strings.Replace(saloon, "low ball", "other", 1)+`}`)
	if status, _ := reply(t, h, "sweep", byDigest); status != http.StatusNotFound {
		t.Errorf("after another took its room: %d, want 404", status)
	}
}

// TestEnvelopesThatAreWrong name what is wrong, with its place in what was sent.
func TestEnvelopesThatAreWrong(t *testing.T) {
	tests := []struct {
		name, path, body, key string
		line                  int
	}{
		{"unknown key", "sweep", `{"study": ` + saloon + `, "change": {}}`, "change", 18},
		{"wrong study", "sweep", "{\n\"study\": {\"format\": \"toewright/1\"}}", "study.units", 2},
		{"no study", "sweep", `{"study": 3}`, "study", 1},
		{"two digests", "sweep", `{"study": {"digest": "a", "format": "b"}}`, "study.format", 1},
		{"digest of no text", "sweep", `{"study": {"digest": 1}}`, "study.digest", 1},
		{"changes of a call of no car", "search", `{"study": ` + saloon + `, "changes": {}}`, "changes", 0},
		{"changes and a candidate", "sweep?candidate=base", `{"study": ` + saloon + `, "changes": {}}`, "candidate", 0},
		{"changes that are none", "sweep", `{"study": ` + saloon + `, "changes": {"x": 1}}`, "x", 0},
		{"the base car's name", "sweep", `{"study": ` + saloon + `, "name": "base"}`, "name", 18},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			r := post(t, New(Config{}), tt.path, tt.body)
			if f := readFault(t, r); r.StatusCode != http.StatusBadRequest || f.Key != tt.key || f.Line != tt.line {
				t.Errorf("%d %+v, want 400, %q, line %d", r.StatusCode, f, tt.key, tt.line)
			}
		})
	}
}

// TestKeptStudyServesManyAtOnce: one study answers all calls at once and stays as it is; to
// be run with the race detector.
func TestKeptStudyServesManyAtOnce(t *testing.T) {
	h := New(Config{})
	text := fullStudy(t)
	fresh := New(Config{Kept: 1}) // keeps none
	r := post(t, h, "sweep", `{"study": `+text+`}`)
	named := `{"study": {"digest": "` + r.Header.Get(digestHeader) + `"}}`
	var all sync.WaitGroup
	for _, call := range []string{"sweep", "compare", "steer", "diagnose", "axle", "loads", "covers", "choose", "tolerance?cars=50", "drawing?as=svg", "map?columns=4&rows=4", "locate"} {
		for range 2 {
			all.Go(func() {
				_, want := reply(t, fresh, call, text)
				for _, sent := range []string{text, named} {
					if _, got := reply(t, h, call, sent); got != want {
						t.Errorf("%s: %.100s, want %.100s", call, got, want)
					}
				}
			})
		}
	}
	all.Wait()
}
