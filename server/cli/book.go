package cli

import (
	"errors"
	"flag"
	"log/slog"
	"strconv"
	"time"

	"rimside/store/blob"
	"rimside/store/sqlite"
)

// fileCommand reads the flags and the one argument of a command that works on a data folder and a file.
func fileCommand(c call, name string, needsFile bool) (data, file string, err error) {
	flags := flag.NewFlagSet(name, flag.ContinueOnError)
	flags.StringVar(&data, "data", "", "flag.book")
	operands, err := parse(c, flags)
	if err != nil {
		return "", "", err
	}
	switch {
	case needsFile && len(operands) != 1:
		return "", "", misused("misused.file", "command", name)
	case !needsFile && len(operands) > 0:
		return "", "", misused("misused.flags", "command", name, "given", strconv.Quote(operands[0]))
	case needsFile:
		file = operands[0]
	}
	if data == "" {
		data, err = userDataDir(c.env)
	}
	return data, file, err
}

// openBook opens the book in a folder, making one where there is none.
func openBook(dir string, log *slog.Logger) (*sqlite.Book, error) {
	return sqlite.Open(dir, bookOptions(log))
}

func bookOptions(log *slog.Logger) sqlite.Options {
	return sqlite.Options{Log: log, Blobs: blob.In, Now: notBefore(builtOn(), time.Now, log)}
}

// onBook runs a command's work on a book that must be there already.
func onBook(c call, name string, needsFile bool, work func(book *sqlite.Book, data, file string) error) (err error) {
	data, file, err := fileCommand(c, name, needsFile)
	if err != nil {
		return err
	}
	book, err := openExisting(data, c.textLog(slog.LevelWarn))
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, book.Close()) }()
	return work(book, data, file)
}

// openExisting opens a book that must be there already.
func openExisting(dir string, log *slog.Logger) (*sqlite.Book, error) {
	there, err := sqlite.Exists(dir)
	if err != nil {
		return nil, trouble("data.unread", "why", err)
	}
	if !there {
		return nil, trouble("data.bookless", "dir", dir)
	}
	return openBook(dir, log)
}

// textLog writes what went wrong in the background to stderr.
func (c call) textLog(level slog.Level) *slog.Logger {
	return slog.New(slog.NewTextHandler(c.stderr, &slog.HandlerOptions{Level: level}))
}
