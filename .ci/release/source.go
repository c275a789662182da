package main

import (
	"archive/tar"
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// copyCommitted unpacks the commit of the working directory's repository into a folder and returns its short name.
func copyCommitted(folder string) (string, error) {
	root, err := git("", "rev-parse", "--show-toplevel")
	if err != nil {
		return "", fmt.Errorf("a release is made of a commit, in a git checkout: %w", err)
	}
	top := strings.TrimSpace(string(root))
	commit, err := git(top, "rev-parse", "--short=12", "HEAD")
	if err != nil {
		return "", err
	}
	if changed, err := git(top, "status", "--porcelain"); err != nil {
		return "", err
	} else if len(changed) > 0 {
		fmt.Fprintln(os.Stderr, "release: what is not committed is left out:\n"+string(changed))
	}
	packed, err := git(top, "archive", "--format=tar", "HEAD")
	if err != nil {
		return "", err
	}
	return strings.TrimSpace(string(commit)), unpack(bytes.NewReader(packed), folder)
}

func git(folder string, args ...string) ([]byte, error) {
	command := exec.Command("git", args...)
	command.Dir = folder
	var said bytes.Buffer
	command.Stderr = &said
	out, err := command.Output()
	if err != nil {
		return nil, fmt.Errorf("git %s: %w: %s", args[0], err, strings.TrimSpace(said.String()))
	}
	return out, nil
}

// unpack writes the folders and plain files of an archive. Git archives hold nothing that points elsewhere but links, which
// the tree has none of.
func unpack(packed io.Reader, folder string) error {
	for reader := tar.NewReader(packed); ; {
		entry, err := reader.Next()
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return err
		}
		if !filepath.IsLocal(entry.Name) {
			return fmt.Errorf("the archive names %q, which lies outside", entry.Name)
		}
		if entry.Typeflag != tar.TypeReg {
			continue
		}
		content, err := io.ReadAll(reader)
		if err != nil {
			return err
		}
		file := filepath.Join(folder, filepath.FromSlash(entry.Name))
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(file, content, entry.FileInfo().Mode().Perm()); err != nil {
			return err
		}
	}
}
