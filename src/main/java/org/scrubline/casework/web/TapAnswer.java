package org.scrubline.casework.web;

import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * The sheet after a tap, as the page needs it to follow.
 *
 * @param scrubline always {@link #MARK}, by which an answer of this server is told from one of a network in between
 * @param tap the tap this answers
 * @param version the version the next tap is made on
 * @param answers answer by step code, empty text while blank
 * @param causes why the supervisor did a step, by step code, where it was no plan
 * @param part the part confirmed, empty until it is
 * @param supervision the supervision given, empty until it is said
 * @param role what is confirmed of part and supervision, empty until it is
 * @param pieces said when sponges in and out differ, empty otherwise
 * @param warnings what to look at again in the text just sent
 * @param sheet the same as a device keeps it
 */
record TapAnswer(
        String scrubline,
        UUID tap,
        int version,
        int done,
        int total,
        String progress,
        String verdict,
        List<SheetPage.Reason> reasons,
        Map<String, String> answers,
        Map<String, String> causes,
        String part,
        String supervision,
        String role,
        String pieces,
        List<SheetPage.Recorded> events,
        List<String> strengths,
        List<String> nextSteps,
        List<String> warnings,
        SheetImage sheet) {

    /** What every answer to a tap carries. */
    static final String MARK = "tap";
}
