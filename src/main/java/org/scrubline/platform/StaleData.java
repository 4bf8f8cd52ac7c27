package org.scrubline.platform;

import java.util.List;

/** Someone changed the record since it was read. Carries both versions, line by line, for the 409 page. */
public class StaleData extends RuntimeException {

    private final String back;
    private final transient List<Line> lines;

    /** One field in both versions. */
    public record Line(String label, String yours, String stored) {}

    /**
     * @param back the address of the current version, a path of this server
     * @param lines the fields that differ
     */
    public StaleData(String back, List<Line> lines) {
        super("stale data");
        this.back = back;
        this.lines = List.copyOf(lines);
    }

    public String back() {
        return back;
    }

    public List<Line> lines() {
        return lines;
    }
}
