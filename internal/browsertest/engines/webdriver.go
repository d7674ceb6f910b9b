package engines

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"net/http"
)

// webdriver is a driver that speaks the WebDriver protocol over HTTP.
type webdriver struct {
	process *process
	base    string // address of the session, of the driver before there is one
}

// newWebdriver waits until the driver of a process listens.
func newWebdriver(ctx context.Context, p *process, port int) (*webdriver, error) {
	conn, err := dial(ctx, port)
	if err != nil {
		return nil, fmt.Errorf("%w: %s", err, p.said())
	}
	conn.Close()
	return &webdriver{process: p, base: fmt.Sprintf("http://127.0.0.1:%d/session", port)}, nil
}

func (w *webdriver) call(ctx context.Context, c command, p parameters) (json.RawMessage, error) {
	var body bytes.Buffer
	if c.method == http.MethodPost {
		if p == nil {
			p = parameters{}
		}
		if err := json.NewEncoder(&body).Encode(p); err != nil {
			return nil, err
		}
	}
	request, err := http.NewRequestWithContext(ctx, c.method, w.base+c.path, &body)
	if err != nil {
		return nil, err
	}
	request.Header.Set("Content-Type", "application/json")
	response, err := http.DefaultClient.Do(request)
	if err != nil {
		return nil, fmt.Errorf("%w: %s", err, w.process.said())
	}
	defer response.Body.Close()
	var answer struct {
		Value json.RawMessage `json:"value"`
	}
	if err := json.NewDecoder(response.Body).Decode(&answer); err != nil {
		return nil, fmt.Errorf("%s %s: %s: %w", c.method, c.path, response.Status, err)
	}
	if response.StatusCode != http.StatusOK {
		var failure refusal
		if err := json.Unmarshal(answer.Value, &failure); err != nil {
			return nil, fmt.Errorf("%s %s: %s", c.method, c.path, response.Status)
		}
		return nil, failure
	}
	return answer.Value, nil
}

// begin enters the session that an answer tells of.
func (w *webdriver) begin(answer json.RawMessage) error {
	var session struct {
		ID string `json:"sessionId"`
	}
	if err := json.Unmarshal(answer, &session); err != nil {
		return err
	}
	w.base += "/" + session.ID
	return nil
}

func (w *webdriver) close() {
	// The driver ends its browser with the session.
	if request, err := http.NewRequest(http.MethodDelete, w.base, nil); err == nil {
		if response, err := http.DefaultClient.Do(request); err == nil {
			response.Body.Close()
		}
	}
	w.process.end()
}
