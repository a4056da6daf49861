package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
)

// writeAll puts the files into dir: all of them into a folder beside it first, then each renamed
// into place. On an error before the first rename dir is untouched.
func writeAll(dir string, files []file) (err error) {
	if st, e := os.Stat(dir); e == nil && !st.IsDir() {
		return fmt.Errorf("%s is a file; --out needs a folder", dir)
	}
	parent := filepath.Dir(filepath.Clean(dir))
	if e := os.MkdirAll(parent, 0o777); e != nil {
		return e
	}
	stage, err := os.MkdirTemp(parent, ".standclear-")
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, os.RemoveAll(stage)) }()
	for _, f := range files {
		if err := writeFile(filepath.Join(stage, f.name), f.data); err != nil {
			return err
		}
	}
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return err
	}
	for _, f := range files {
		if err := os.Rename(filepath.Join(stage, f.name), filepath.Join(dir, f.name)); err != nil {
			return err
		}
	}
	return nil
}

func writeFile(name string, data []byte) error {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	if _, err := f.Write(data); err != nil {
		return errors.Join(err, f.Close())
	}
	return f.Close()
}
