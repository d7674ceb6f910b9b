package engines

import (
	"context"
	"encoding/json"
	"fmt"
)

// command is one of the WebDriver commands that the tests need, in both of its spellings.
type command struct {
	marionette string // the name, after "WebDriver:"
	method     string // of HTTP
	path       string // below the session
}

var (
	newSession     = command{"NewSession", "POST", ""}
	navigate       = command{"Navigate", "POST", "/url"}
	setTimeouts    = command{"SetTimeouts", "POST", "/timeouts"}
	executeScript  = command{"ExecuteAsyncScript", "POST", "/execute/async"}
	performActions = command{"PerformActions", "POST", "/actions"}
	releaseActions = command{"ReleaseActions", "DELETE", "/actions"}
	setWindow      = command{"SetWindowRect", "POST", "/window/rect"}
	screenshot     = command{"TakeScreenshot", "GET", "/screenshot"}
	printPage      = command{"Print", "POST", "/print"}
	findElement    = command{"FindElement", "POST", "/element"}
	newWindow      = command{"NewWindow", "POST", "/window/new"}
	switchWindow   = command{"SwitchToWindow", "POST", "/window"}
)

// sendKeys is the command that types into an element.
func sendKeys(element string) command {
	return command{"ElementSendKeys", "POST", "/element/" + element + "/value"}
}

// parameters are those of a command, by their names in the protocol.
type parameters map[string]any

// remote is a browser that takes commands.
type remote interface {
	// call has a command done and returns what is its value.
	call(ctx context.Context, c command, p parameters) (json.RawMessage, error)
	// close ends the browser and removes what it has written.
	close()
}

// refusal is an error that the browser answers with.
type refusal struct {
	Code    string `json:"error"`
	Message string `json:"message"`
}

func (r refusal) Error() string { return fmt.Sprintf("%s: %s", r.Code, r.Message) }
