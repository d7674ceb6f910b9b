package store

import (
	"errors"
	"fmt"
	"hash/crc32"
	"strconv"
	"strings"
)

// sealVersion is the version of what this program writes.
const sealVersion = 1

// Errors of a text that cannot be used as it stands.
var (
	ErrDamaged = errors.New("it is damaged: its checksum does not fit")
	ErrNewer   = errors.New("it was written by a newer version of this program: reload the page to update it")
)

// seal returns a body under a line with its kind, version and checksum:
// "toewright-revision/1 1c291ca3".
func seal(kind, body string) string { return sealAs(kind, sealVersion, body) }

func sealAs(kind string, version int, body string) string {
	title := fmt.Sprintf("toewright-%s/%d", kind, version)
	return fmt.Sprintf("%s %08x\n%s", title, checksum(title, body), body)
}

// unseal returns the body of a sealed text. The error is [ErrDamaged], or [ErrNewer]
// for a text that is whole but of a later version.
func unseal(kind, text string) (string, error) {
	line, body, _ := strings.Cut(text, "\n")
	title, sum, _ := strings.Cut(line, " ")
	if sum != fmt.Sprintf("%08x", checksum(title, body)) {
		return "", ErrDamaged
	}
	version, ok := strings.CutPrefix(title, "toewright-"+kind+"/")
	n, err := strconv.Atoi(version)
	switch {
	case !ok || err != nil || n < 1:
		return "", ErrDamaged
	case n > sealVersion:
		return "", ErrNewer
	}
	return body, nil
}

// checksum finds every change of up to 32 bits in a row. It guards against accidents,
// not against an enemy, who could reach the storage only through the page itself.
func checksum(title, body string) uint32 {
	return crc32.ChecksumIEEE([]byte(title + "\n" + body))
}
