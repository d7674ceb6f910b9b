package store

import "errors"

// Storage keeps texts by name. A Set is whole or not at all.
type Storage interface {
	// Get returns a text; ok is false where there is none.
	Get(key string) (text string, ok bool, err error)
	// Set keeps a text. The error is an [ErrFull] where there is no room.
	Set(key, text string) error
	// Remove removes a text, if there is one.
	Remove(key string) error
	// Keys lists the names of all texts, in any order.
	Keys() ([]string, error)
}

// Errors of a storage, in the words that the user reads.
var (
	ErrFull   = errors.New("the browser's storage for this page is full: save the study to a file, then delete studies that are no longer needed")
	ErrDenied = errors.New("the browser does not let this page keep anything: save the study to a file before you leave")
)
