package app

import "github.com/maxence-charriere/go-app/v10/pkg/errors"

var errNoCipher = errors.New("encryption is left out of the page")

func encrypt(string, []byte) ([]byte, error) { return nil, errNoCipher }

func decrypt(string, []byte) ([]byte, error) { return nil, errNoCipher }
