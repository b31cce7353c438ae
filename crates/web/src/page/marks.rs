//! The signs: one shape for each weight of a finding, so that colour is never the only sign; and the pictures of the tabs.

use groundhold_finding::Severity;

/// Class of the weight's colour.
pub fn class(s: Severity) -> &'static str {
    match s {
        Severity::Stop => "sev-stop",
        Severity::Ask => "sev-ask",
        Severity::Watch => "sev-watch",
        Severity::Note => "sev-note",
    }
}

/// The shape of a weight in a box of 18 by 18.
pub fn shape(s: Severity) -> &'static str {
    match s {
        Severity::Stop => {
            r#"<path class="shape" d="M5.6 1h6.8L17 5.6v6.8L12.4 17H5.6L1 12.4V5.6z"/><path class="in" d="M4.5 7.6h9v2.8h-9z"/>"#
        }
        Severity::Ask => {
            r#"<path class="shape" d="M9 .4 17.6 9 9 17.6.4 9z"/><path class="in" d="M6.4 7.2C6.4 5.4 7.5 4.5 9 4.5s2.7 1 2.7 2.5c0 1.9-1.9 1.9-1.9 3.6H8.1c0-2.3 1.7-2.5 1.7-3.5 0-.5-.3-.8-.8-.8s-.8.3-.9.9zM8.1 11.5h1.8v1.8H8.1z"/>"#
        }
        Severity::Watch => {
            r#"<path class="shape" d="M9 1 17.6 16.5H.4z"/><path class="in" d="M8 6.3h2l-.4 5H8.4zM8.1 12.3h1.8v1.9H8.1z"/>"#
        }
        Severity::Note => {
            r#"<circle class="shape" cx="9" cy="9" r="8"/><path class="in" d="M8 4.3h2v2H8zM8 7.4h2v6.2H8z"/>"#
        }
    }
}

/// The shape as a picture of its own.
pub fn mark(s: Severity) -> String {
    format!(r#"<svg class="mark {}" viewBox="0 0 18 18" aria-hidden="true">{}</svg>"#, class(s), shape(s))
}

/// What the weight asks of a person.
pub fn asks(s: Severity) -> &'static str {
    match s {
        Severity::Stop => "do not build this",
        Severity::Ask => "ask a licensed person or an authority",
        Severity::Watch => "will need care",
        Severity::Note => "good to know",
    }
}

/// Pictures of the tabs, lines in a box of 24 by 24.
pub fn tab_picture(tab: &str) -> &'static str {
    match tab {
        "Ground" => r#"<path d="M3 19h6v-6h6V7h6"/><path d="M9 21v-6M15 15V9"/>"#,
        "Measure" => r#"<path d="M7 3h6v18H7zM7 7h3M7 11h3M7 15h3"/><path d="M17 6v12"/>"#,
        "Findings" => r#"<path d="M12 3 21 19H3z"/><path d="M12 10v4M12 16.5v.5"/>"#,
        "Order" => r#"<path d="M3 7h18M3 12h11M3 17h18M17 10v4M9 5v4M13 15v4"/>"#,
        "Site" => r#"<path d="M8 21V5l3-2v18M3 9h5M11 9h10"/>"#,
        _ => r#"<path d="M4 6h6l2 2h8v11H4z"/>"#,
    }
}
