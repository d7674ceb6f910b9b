package engines

import (
	"bytes"
	"net"
	"os"
	"os/exec"
	"sync"
	"syscall"
)

// process is a program that runs, with a folder of its own.
type process struct {
	cmd *exec.Cmd
	dir string
	out tail
}

// run starts a program, with the environment's own variables and more. It is alone in its
// group, so that what it starts ends with it.
func run(dir string, environment []string, name string, args ...string) (*process, error) {
	p := &process{cmd: exec.Command(name, args...), dir: dir}
	p.cmd.Env = append(os.Environ(), environment...)
	p.cmd.Stdout, p.cmd.Stderr = &p.out, &p.out
	p.cmd.SysProcAttr = &syscall.SysProcAttr{Setpgid: true}
	if err := p.cmd.Start(); err != nil {
		return nil, err
	}
	return p, nil
}

// said returns the end of what the program has printed.
func (p *process) said() string { return p.out.String() }

// end stops the program and all that it has started, and removes its folder.
func (p *process) end() {
	syscall.Kill(-p.cmd.Process.Pid, syscall.SIGKILL)
	p.cmd.Wait()
	os.RemoveAll(p.dir)
}

// freePort returns a port of this machine that nothing listens on.
func freePort() (int, error) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return 0, err
	}
	defer l.Close()
	return l.Addr().(*net.TCPAddr).Port, nil
}

// tail keeps the end of what is written to it.
type tail struct {
	mu   sync.Mutex
	text []byte
}

// tailSize is how much of a program's output an error shows, in bytes.
const tailSize = 2000

func (t *tail) Write(b []byte) (int, error) {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.text = append(t.text, b...)
	if extra := len(t.text) - tailSize; extra > 0 {
		t.text = t.text[extra:]
	}
	return len(b), nil
}

func (t *tail) String() string {
	t.mu.Lock()
	defer t.mu.Unlock()
	return string(bytes.TrimSpace(t.text))
}
