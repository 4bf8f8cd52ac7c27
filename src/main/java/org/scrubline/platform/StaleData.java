package org.scrubline.platform;

import java.util.List;

/** Someone changed the record since it was read. Carries both versions, line by line, for the 409 page. */
public class StaleData extends RuntimeException {

    private final Why why;
    private final String back;
    private final transient List<Line> lines;

    /** What stands against storing it; each has a title and a sentence of its own on the page. */
    public enum Why {
        /** The record moved on since it was read. */
        CHANGED,
        /** What is signed is never changed; only a new version can be made. */
        SIGNED
    }

    /** One field in both versions. */
    public record Line(String label, String yours, String stored) {}

    /**
     * @param back the address of the current version, a path of this server
     * @param lines the fields that differ
     */
    public StaleData(String back, List<Line> lines) {
        this(Why.CHANGED, back, lines);
    }

    private StaleData(Why why, String back, List<Line> lines) {
        super("stale data");
        this.why = why;
        this.back = back;
        this.lines = List.copyOf(lines);
    }

    /**
     * The sheet is signed.
     *
     * @param back the address of the record, a path of this server
     */
    public static StaleData signed(String back) {
        return new StaleData(Why.SIGNED, back, List.of());
    }

    public Why why() {
        return why;
    }

    public String back() {
        return back;
    }

    public List<Line> lines() {
        return lines;
    }
}
