package report

import (
	"crypto/sha256"
	"encoding/base64"
	"regexp"
	"strings"
	"testing"
)

var stylePattern = regexp.MustCompile(`(?s)<style>(.*)</style>`)

// TestPolicyLetsTheStyle: the policy has the hash of the page's own stylesheet, as the
// page says itself and as a server repeats it.
func TestPolicyLetsTheStyle(t *testing.T) {
	for _, paper := range []Paper{A4, Letter} {
		page := written(t, gathered(t, car(t, "double-wishbone-rack"), Options{Paper: paper}))
		sum := sha256.Sum256([]byte(stylePattern.FindStringSubmatch(page)[1]))
		hash := base64.StdEncoding.EncodeToString(sum[:])
		if policy := Policy(paper); !strings.Contains(policy, "style-src 'sha256-"+hash+"'") || !strings.HasPrefix(policy, "default-src 'none'") {
			t.Errorf("%s: policy %s, want the hash %s and nothing else", paper, policy, hash)
		}
		if !strings.Contains(page, `content="`+Policy(paper)+`"`) {
			t.Errorf("%s: the page does not state its policy", paper)
		}
	}
}

func TestStylesheetNamesThePaper(t *testing.T) {
	if !strings.Contains(stylesheet(A4), "size:A4 portrait") || !strings.Contains(stylesheet(Letter), "size:letter portrait") {
		t.Error("a stylesheet does not name its paper")
	}
}
