//! Where do the page's files come from? Out of the program, or from a folder while it is being worked on.

use std::borrow::Cow;
use std::fs;
use std::io::Read;
use std::path::{Path, PathBuf};

use crate::tag::tag;

mod embedded {
    //! The list written by `build.rs`: path, content, and whether the content is compressed.
    include!(concat!(env!("OUT_DIR"), "/embedded.rs"));
}

/// Where the page's files come from.
#[derive(Debug, Clone)]
pub enum Pages {
    /// Out of the program.
    Embedded,
    /// From a folder.
    Folder(PathBuf),
}

/// One file of the page.
pub(crate) struct File {
    /// Its content.
    pub bytes: Cow<'static, [u8]>,
    /// The content is compressed.
    pub gzip: bool,
    /// Its media type.
    pub kind: &'static str,
    /// Its entity tag.
    pub tag: String,
}

/// Media types by ending.
const KINDS: &[(&str, &str)] = &[
    ("html", "text/html; charset=utf-8"),
    ("js", "text/javascript; charset=utf-8"),
    ("css", "text/css; charset=utf-8"),
    ("wasm", "application/wasm"),
    ("svg", "image/svg+xml"),
    ("png", "image/png"),
    ("json", "application/json"),
    ("webmanifest", "application/manifest+json"),
    ("txt", "text/plain; charset=utf-8"),
];

impl Pages {
    /// True when there is a page to show.
    pub fn are_there(&self) -> bool {
        self.find("/").is_some()
    }

    /// The file of a request's path; none for a path that is not one of the page's own.
    pub(crate) fn find(&self, path: &str) -> Option<File> {
        let name = path.strip_prefix('/')?;
        let name = if name.is_empty() { "index.html" } else { name };
        let (bytes, gzip) = match self {
            Pages::Embedded => {
                let (_, bytes, gzip) = embedded::FILES.iter().find(|(n, _, _)| *n == name)?;
                (Cow::Borrowed(*bytes), *gzip)
            }
            Pages::Folder(folder) => from_folder(folder, name)?,
        };
        let ending = name.rsplit_once('.').map_or("", |(_, e)| e);
        let kind = KINDS.iter().find(|(e, _)| *e == ending).map_or("application/octet-stream", |(_, k)| k);
        let tag = tag([&*bytes]);
        Some(File { bytes, gzip, kind, tag })
    }
}

/// A file below a folder: plain names only, and never by a link that leads out.
fn from_folder(folder: &Path, name: &str) -> Option<(Cow<'static, [u8]>, bool)> {
    let plain = |part: &str| {
        !part.is_empty()
            && !part.starts_with('.')
            && part.bytes().all(|b| b.is_ascii_alphanumeric() || matches!(b, b'.' | b'-' | b'_'))
    };
    if !name.split('/').all(plain) {
        return None;
    }
    let root = fs::canonicalize(folder).ok()?;
    let read = |name: &str| {
        let path = fs::canonicalize(root.join(name)).ok()?;
        if path.starts_with(&root) { fs::read(path).ok() } else { None }
    };
    let whole = read(name)?;
    Some(match read(&format!("{name}.gz")) {
        Some(packed) => (packed.into(), true),
        None => (whole.into(), false),
    })
}

impl File {
    /// The content as it was before it was compressed.
    pub fn unpacked(&self) -> Cow<'_, [u8]> {
        if !self.gzip {
            return Cow::Borrowed(&self.bytes);
        }
        let mut out = vec![];
        match flate2::read::GzDecoder::new(&*self.bytes).read_to_end(&mut out) {
            Ok(_) => Cow::Owned(out),
            Err(_) => Cow::Borrowed(&[]),
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn a_folder_gives_its_files_and_nothing_outside_it() {
        let base = std::env::temp_dir().join(format!("groundhold-pages-{}", std::process::id()));
        let inside = base.join("inside");
        fs::create_dir_all(&inside).unwrap();
        fs::write(inside.join("index.html"), "page").unwrap();
        fs::write(inside.join(".hidden"), "no").unwrap();
        fs::write(base.join("secret.txt"), "no").unwrap();
        let pages = Pages::Folder(inside.clone());
        assert_eq!(&*pages.find("/").unwrap().bytes, b"page");
        assert_eq!(pages.find("/index.html").unwrap().kind, "text/html; charset=utf-8");
        for path in
            ["/../secret.txt", "/..%2fsecret.txt", "/.hidden", "//index.html", "/index.html/", "index.html", "/a\\b"]
        {
            assert!(pages.find(path).is_none(), "{path}");
        }
        #[cfg(unix)]
        {
            std::os::unix::fs::symlink(base.join("secret.txt"), inside.join("link.txt")).unwrap();
            assert!(pages.find("/link.txt").is_none(), "a link that leads out");
        }
        fs::remove_dir_all(&base).unwrap();
    }
}
