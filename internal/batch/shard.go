package batch

import (
	"fmt"
	"strconv"
	"strings"

	"toewright/internal/engine"
)

// maxShards bounds how finely work can be divided: beyond it starting a process
// costs more than what it does.
const maxShards = 1_000_000

// ParseShard reads a shard as "i/n". Engines that run batches count from 0 or from
// 1; i may run either way, since n/n is the same shard as 0/n.
func ParseShard(text string) (engine.Shard, error) {
	left, right, _ := strings.Cut(text, "/")
	i, err := strconv.Atoi(left)
	n, err2 := strconv.Atoi(right)
	if err != nil || err2 != nil {
		return engine.Shard{}, fmt.Errorf("%.40q is not a shard, want i/n such as 0/8", text)
	}
	if n < 1 || n > maxShards || i < 0 || i > n {
		return engine.Shard{}, fmt.Errorf("there is no shard %d of %d, want 0/n to n-1/n, or 1/n to n/n, of at most %d", i, n, maxShards)
	}
	return engine.Shard{Index: i % n, Of: n}, nil
}

// named returns how a shard is asked for.
func named(s engine.Shard) string { return fmt.Sprintf("%d/%d", s.Index, s.Of) }

// valid reports whether a shard is one that ParseShard returns.
func valid(s engine.Shard) bool {
	return s.Of >= 1 && s.Of <= maxShards && s.Index >= 0 && s.Index < s.Of
}
