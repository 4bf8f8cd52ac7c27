package org.scrubline.casework;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * Looks in typed text for what may identify a patient: long numbers, dates of birth, titles with a name. A hint, not a
 * proof: the writer is warned once and decides. Patterns are common practice, no source.
 */
public final class PatientIdentity {

    private static final Pattern LONG_NUMBER = Pattern.compile("(?<![\\d.])\\d(?:[ -]?\\d){5,}(?![\\d.])");
    private static final Pattern DATE_OF_BIRTH = Pattern.compile(
            "(?iu)\\b(?:d\\.?o\\.?b\\.?|date of birth|born)\\b"
                    + "|(?<![\\d./-])\\d{1,2}[./-]\\d{1,2}[./-](?:19|20)?\\d{2}(?![./-]?\\d)|(?<![\\d-])(?:19|20)\\d{2}-\\d{2}-\\d{2}(?![\\d-])");
    private static final Pattern TITLE =
            Pattern.compile("(?U)\\b(?:Mr|Mrs|Ms|Miss|Mx|Master|Sir|Dame|Lady|Lord|Dr|Prof)\\b\\.?\\s+\\p{Lu}\\p{L}+");

    private PatientIdentity() {}

    /** Message keys of the warnings the text deserves; empty when it looks harmless. */
    public static List<String> hints(String text) {
        List<String> hints = new ArrayList<>();
        String rest = text;
        for (Map.Entry<String, Pattern> screen : List.of(
                Map.entry("identity.date", DATE_OF_BIRTH),
                Map.entry("identity.number", LONG_NUMBER),
                Map.entry("identity.title", TITLE))) {
            if (screen.getValue().matcher(rest).find()) {
                hints.add(screen.getKey());
            }
            rest = screen.getValue().matcher(rest).replaceAll("");
        }
        return hints;
    }
}
