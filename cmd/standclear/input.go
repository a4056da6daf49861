package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"standclear/detail/keyfile"
)

// mostBytes is the most that is read of a file or a pipe; the readers of each kind of file allow less (judgement).
const mostBytes = 16 << 20

// file reads a file by its name, standard input for "-"; what it is called in messages comes back with it.
func (e env) file(name string) (called string, src []byte, err error) {
	if name == "-" {
		src, err = readUpTo(e.in, "standard input")
		return "standard input", src, err
	}
	src, err = readFile(name)
	return keyfile.Printed(name), src, err
}

// readFile reads a file, or a pipe, of bearable size.
func readFile(name string) ([]byte, error) {
	f, err := os.Open(name)
	if err == nil {
		defer f.Close()
		var src []byte
		if src, err = readUpTo(f, keyfile.Printed(name)); err == nil {
			return src, nil
		}
	}
	if p := (*fs.PathError)(nil); errors.As(err, &p) {
		p.Path = keyfile.Printed(p.Path)
	}
	return nil, err
}

// readUpTo reads to the end, which must come.
func readUpTo(r io.Reader, called string) ([]byte, error) {
	src, err := io.ReadAll(io.LimitReader(r, mostBytes+1))
	if err == nil && len(src) > mostBytes {
		err = fmt.Errorf("%s is larger than %d MB", called, mostBytes>>20)
	}
	return src, err
}
