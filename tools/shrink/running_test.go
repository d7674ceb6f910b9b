package main

import (
	"path/filepath"
	"testing"
)

// jumping is a program that jumps, waits, unwinds its stack and goes on, and says what it found.
const jumping = `package main

import (
	"errors"
	"fmt"
	"math"
	"runtime"
	"sort"
	"strings"
	"sync"
	"time"
)

type point struct{ x, y, z float64 }

type body interface{ volume() float64 }

type ball struct{ at point; r float64 }
type box struct{ from, to point }

func (b ball) volume() float64 { return 4. / 3 * math.Pi * b.r * b.r * b.r }
func (b *box) volume() float64 {
	return (b.to.x - b.from.x) * (b.to.y - b.from.y) * (b.to.z - b.from.z)
}

// kind has every shape of jump.
func kind(n int) (s string) {
	defer func() {
		if e := recover(); e != nil {
			s = fmt.Sprint("recovered ", e)
		}
	}()
	for i := 0; ; i++ {
		switch {
		case i > n:
			goto done
		case i%3 == 1:
			continue
		case i == 17:
			var none []int
			return fmt.Sprint(none[n])
		case i == 11:
			break
		}
		s += string(rune('a' + i%26))
		if len(s) > 40 {
			break
		}
	}
done:
	return strings.ToUpper(s)
}

// relay passes numbers from one goroutine to the next, each with its own stack.
func relay(n int) int {
	first := make(chan int)
	in := first
	for range n {
		out := make(chan int)
		go func(in, out chan int) {
			for v := range in {
				out <- v + deep(v%50)
			}
			close(out)
		}(in, out)
		in = out
	}
	go func() {
		for v := range 20 {
			first <- v
		}
		close(first)
	}()
	sum := 0
	for v := range in {
		sum += v
	}
	return sum
}

// deep grows the stack, and waits at its end.
func deep(n int) int {
	var big [64]int
	if n == 0 {
		runtime.Gosched()
		return 1
	}
	big[n] = deep(n-1) + 1
	return big[n]
}

func points(n int) (sum point) {
	ps := make([]point, n)
	for i := range ps {
		t := float64(i)
		ps[i] = point{math.Sin(t), math.Sqrt(t), 1 / (1 + t)}
	}
	sort.Slice(ps, func(i, j int) bool { return ps[i].x < ps[j].x })
	for i := 1; i < n; i++ {
		p, q := &ps[i], ps[i-1]
		sum.x += p.x * q.z
		sum.y += math.Max(p.y, q.x)
		sum.z = math.FMA(p.z, q.y, sum.z)
		ps[i-1].z, p.y = p.y, q.z
	}
	if sum.x != sum.x || sum.y < 0 {
		return point{}
	}
	return sum
}

func main() {
	for _, n := range []int{0, 5, 12, 20} {
		fmt.Println(kind(n))
	}
	fmt.Println(relay(8), points(500))
	bodies := map[string]body{"ball": ball{r: 2}, "box": &box{to: point{1, 2, 3}}, "none": (*box)(nil)}
	names := make([]string, 0, len(bodies))
	for n := range bodies {
		names = append(names, n)
	}
	sort.Strings(names)
	for _, n := range names {
		func() {
			defer func() { fmt.Println(n, recover()) }()
			fmt.Println(bodies[n].volume())
		}()
	}
	var wait sync.WaitGroup
	var mutex sync.Mutex
	left := time.After(20 * time.Millisecond)
	total := uint64(0)
	for i := range 30 {
		wait.Go(func() {
			time.Sleep(time.Duration(i%4) * time.Millisecond)
			for j := range 100 {
				if j%25 == 0 {
					runtime.GC()
				}
				mutex.Lock()
				total += uint64(i*j) << (j % 7) >> (i % 5)
				mutex.Unlock()
			}
		})
	}
	wait.Wait()
	select {
	case <-left:
	case <-time.After(time.Minute):
		fmt.Println("no minute passed")
	}
	err := fmt.Errorf("outer: %w", errors.New("inner"))
	fmt.Println(total, errors.Unwrap(err), math.Float32bits(float32(total)), int32(total)>>3, uint8(total), -7/2, -7%3)
}
`

// TestSimplerProgramRunsAlike has a program say what it said before it was made smaller.
func TestSimplerProgramRunsAlike(t *testing.T) {
	linked := build(t, jumping)
	smaller := filepath.Join(filepath.Dir(linked), "smaller.wasm")
	if err := run(smaller, linked); err != nil {
		t.Fatal(err)
	}
	before, after := len(sectionOf(t, linked, codeSection)), len(sectionOf(t, smaller, codeSection))
	if after*100 > before*95 {
		t.Errorf("%d bytes of code became %d, want 95 %% at most", before, after)
	}
	want := said(t, linked)
	if got := said(t, smaller); got != want {
		t.Errorf("the program says\n%s, where it said\n%s", got, want)
	}
	if want != "" {
		contains(t, want, "ACDFGIJL", "recovered runtime error: index out of range [20] with length 0", "inner")
	}
}
