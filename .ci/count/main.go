// Command count runs `go test -json`, shows how it goes, and ends with one line that counts the tests.
package main

import (
	"bufio"
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"strings"
)

func main() {
	log := flag.String("log", "", "`FILE` to write every event to")
	failed := flag.String("failed", "", "`NAMES` of checks that failed before, with commas between; each counts as a failure")
	flag.Parse()
	if flag.NArg() == 0 {
		fmt.Fprintln(os.Stderr, "count: say which command to run, such as: count -- go test -json ./...")
		os.Exit(2)
	}
	sum := newTally(os.Stdout)
	for name := range strings.SplitSeq(*failed, ",") {
		if name != "" {
			sum.failedStep(name)
		}
	}
	if err := run(flag.Args(), *log, sum); err != nil {
		sum.broken(err.Error())
	}
	os.Exit(sum.finish())
}

// run runs the command and feeds what it prints to the tally.
func run(args []string, log string, sum *tally) error {
	record := io.Discard
	if log != "" {
		file, err := os.Create(log)
		if err != nil {
			return err
		}
		defer file.Close()
		record = file
	}
	command := exec.Command(args[0], args[1:]...)
	command.Stderr = os.Stdout
	output, err := command.StdoutPipe()
	if err != nil {
		return err
	}
	if err := command.Start(); err != nil {
		return err
	}
	reader := bufio.NewReader(io.TeeReader(output, record))
	for {
		line, err := reader.ReadString('\n')
		if line != "" {
			sum.line(line)
		}
		if err != nil {
			break
		}
	}
	// Failing tests make the command fail too; that is counted already.
	if err := command.Wait(); err != nil && sum.failed == 0 {
		return fmt.Errorf("%s ended with %v though no test failed", args[0], err)
	}
	return nil
}
