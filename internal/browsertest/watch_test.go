package browsertest

import (
	"testing"

	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
)

func TestWatchConsole(t *testing.T) {
	failedLoad := chromedp.ConsoleMessage{Type: chromedp.ConsoleError, Source: "network", Text: "failed to load"}
	tests := []struct {
		name      string
		message   chromedp.ConsoleMessage
		forgiving bool
		want      int
	}{
		{name: "error", message: chromedp.ConsoleMessage{Type: chromedp.ConsoleError, Text: "no"}, want: 1},
		{name: "exception", message: chromedp.ConsoleMessage{Type: chromedp.ConsoleException, Text: "no"}, want: 1},
		{name: "log", message: chromedp.ConsoleMessage{Type: chromedp.ConsoleLog, Text: "fine"}, want: 0},
		{name: "failed load", message: failedLoad, want: 1},
		{name: "failed load, forgiven", message: failedLoad, forgiving: true, want: 0},
		{name: "error, not of the network", message: chromedp.ConsoleMessage{Type: chromedp.ConsoleError}, forgiving: true, want: 1},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			w := &watch{forgiving: tt.forgiving}
			w.console(tt.message)
			if got := len(w.complaints); got != tt.want {
				t.Errorf("complaints after %v = %d, want %d", tt.message, got, tt.want)
			}
		})
	}
}

func TestWatchRequest(t *testing.T) {
	tests := []struct {
		url  string
		want int
	}{
		{"http://127.0.0.1:80/web/app.wasm", 0},
		{"blob:http://127.0.0.1:80/1234", 0},
		{"data:image/png;base64,", 0},
		{"http://127.0.0.1:8080/", 1},
		{"https://example.com/font.woff2", 1},
	}
	for _, tt := range tests {
		w := &watch{origin: "http://127.0.0.1:80"}
		w.request(&network.EventRequestWillBeSent{Request: &network.Request{URL: tt.url}})
		if got := len(w.complaints); got != tt.want {
			t.Errorf("complaints of a request to %s = %d, want %d", tt.url, got, tt.want)
		}
	}
}
