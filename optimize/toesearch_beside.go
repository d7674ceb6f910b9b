package optimize

import (
	"context"
	"runtime"
	"sync"

	"toewright/optimize/nlp"
)

// beside makes local searches of a run on the other processors: from its last start
// downward, while the run itself goes upward and takes what it finds made. Where a search
// ends does not depend on who makes it, so that the answer is that of one processor.
type beside struct {
	mu   sync.Mutex
	made []*atStart // by start; nil where nobody has begun
	all  sync.WaitGroup
	stop context.CancelFunc
}

// atStart is a local search that somebody makes.
type atStart struct {
	done chan struct{}
	out  nlp.Polished
	ok   bool
}

// searchBeside begins to make searches of p, and adds them to those that the settings know.
// It returns what ends that; on one processor there is nothing of it.
func (p *ToeSearch) searchBeside(ctx context.Context, s *Settings) (with *Settings, end func()) {
	others := runtime.GOMAXPROCS(0) - 1
	if others < 1 || s != nil && s.Known != nil {
		return s, func() {}
	}
	own := s.WithDefaults(len(p.Free))
	b := &beside{made: make([]*atStart, own.Restarts)}
	ctx, b.stop = context.WithCancel(ctx)
	quiet := own
	quiet.Progress = nil
	for range others {
		b.all.Go(func() { b.work(ctx, p.problem(newToeModel(p)), &quiet) })
	}
	own.Made = b.take
	return &own, func() {
		b.stop()
		b.all.Wait()
	}
}

// work makes searches until all are begun.
func (b *beside) work(ctx context.Context, problem nlp.Problem, s *Settings) {
	for start := len(b.made) - 1; start > 0 && ctx.Err() == nil; start-- {
		a, mine := b.claim(start)
		if !mine {
			continue
		}
		if list, err := nlp.Polish(ctx, problem, s, start, len(b.made)); err == nil && len(list) == 1 {
			a.out, a.ok = list[0], true
		}
		close(a.done)
	}
}

// claim returns the search from a start, and whether it is the caller's to make.
func (b *beside) claim(start int) (a *atStart, mine bool) {
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.made[start] == nil {
		b.made[start], mine = &atStart{done: make(chan struct{})}, true
	}
	return b.made[start], mine
}

// take is the run's [nlp.Settings.Made].
func (b *beside) take(start int) (nlp.Polished, bool) {
	if start < 0 || start >= len(b.made) {
		return nlp.Polished{}, false
	}
	a, mine := b.claim(start)
	if mine {
		return nlp.Polished{}, false
	}
	<-a.done
	return a.out, a.ok
}
