package org.scrubline.committee.web;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A signed decision with what was said about it.
 *
 * @param next what this reader may do now
 * @param sendLetter where to record that the letter was given; null when this reader may not or it was
 */
record DecisionPage(
        String href,
        String nav,
        DecisionView view,
        String state,
        @Nullable String appealUntil,
        SignatureView signature,
        List<SaidView> said,
        List<Link> next,
        @Nullable String sendLetter,
        String hash) {

    record SignatureView(String name, String role, String at, String meaning) {}

    /** A statement about the decision. */
    record SaidView(String title, List<String> facts, List<String> paragraphs, SignatureView signature) {}
}
