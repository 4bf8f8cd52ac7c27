package org.scrubline.people.web;

import java.time.ZoneId;
import java.util.List;

/** Time zones to choose from: region names only, without the historical aliases. */
final class ZoneOptions {

    private static final List<Option> ALL = ZoneId.getAvailableZoneIds().stream()
            .filter(zone -> zone.matches("(Africa|America|Asia|Atlantic|Australia|Europe|Indian|Pacific)/[A-Za-z_/-]+"))
            .sorted()
            .map(zone -> new Option(zone, zone.replace('_', ' ')))
            .toList();

    private ZoneOptions() {}

    /** One entry of a select field. */
    record Option(String value, String label) {}

    static List<Option> all() {
        return ALL;
    }
}
