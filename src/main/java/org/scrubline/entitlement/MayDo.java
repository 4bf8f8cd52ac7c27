package org.scrubline.entitlement;

import java.util.List;

/**
 * What a trainee may do, in words.
 *
 * @param none what to say when there is no line
 */
public record MayDo(List<Line> lines, String none) {

    /**
     * One family and its bands.
     *
     * @param notes when it is looked at again, and whether it is suspended
     * @param careful whether the notes need attention
     */
    public record Line(String text, String meaning, List<String> notes, boolean careful) {

        public Line {
            notes = List.copyOf(notes);
        }
    }

    public MayDo {
        lines = List.copyOf(lines);
    }
}
