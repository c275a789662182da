package engine

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"os/exec"
	"strings"
	"time"
)

// patience is how long a browser may take to start or to answer one request: more than it needs on a busy machine.
const patience = 60 * time.Second

// process is a program that was started here and is ended here, with all that it started in turn.
type process struct {
	command *exec.Cmd
	ended   chan struct{}
}

// start starts a program. What it says on either channel goes to hear, line by line.
func start(hear func(line string), env []string, name string, arguments ...string) (*process, error) {
	command := exec.Command(name, arguments...)
	command.Env = append(os.Environ(), env...)
	reader, writer, err := os.Pipe()
	if err != nil {
		return nil, err
	}
	command.Stdout, command.Stderr = writer, writer
	together(command)
	if err := command.Start(); err != nil {
		reader.Close()
		writer.Close()
		return nil, err
	}
	writer.Close()
	go listen(reader, hear)
	p := &process{command, make(chan struct{})}
	go func() {
		_ = command.Wait()
		close(p.ended)
	}()
	return p, nil
}

func listen(reader io.ReadCloser, hear func(line string)) {
	defer reader.Close()
	for lines := bufio.NewReader(reader); ; {
		line, err := lines.ReadString('\n')
		if line = strings.TrimSpace(line); line != "" && hear != nil {
			hear(line)
		}
		if err != nil {
			return
		}
	}
}

// wait gives the program a moment to end by itself, and ends it otherwise.
func (p *process) wait(moment time.Duration) {
	if p == nil {
		return
	}
	select {
	case <-p.ended:
	case <-time.After(moment):
	}
	end(p.command) // also what it left behind
	<-p.ended
}

// startAndHear starts a program and waits for the line in which wanted finds something.
func startAndHear(wanted func(line string) string, env []string, name string, arguments ...string) (*process, string, error) {
	found := make(chan string, 1)
	p, err := start(func(line string) {
		if text := wanted(line); text != "" {
			select {
			case found <- text:
			default:
			}
		}
	}, env, name, arguments...)
	if err != nil {
		return nil, "", err
	}
	select {
	case text := <-found:
		return p, text, nil
	case <-p.ended:
		err = fmt.Errorf("%s ended by itself", name)
	case <-time.After(patience):
		err = fmt.Errorf("%s does not say what was waited for", name)
	}
	p.wait(0)
	return nil, "", err
}
