//go:build !linux

package main

import (
	"errors"
	"io/fs"
)

// Other systems have no exchange of folders that the standard library reaches: files are renamed one by one.

func exchange(a, b string) error                     { return errors.ErrUnsupported }
func lockFolder(dir string) (unlock func(), ok bool) { return func() {}, false }
func likeFolder(dir string, like fs.FileInfo) error  { return errors.ErrUnsupported }
func writable(dir string) bool                       { return false }
