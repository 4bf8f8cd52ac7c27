package org.scrubline.casework.web;

import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * What a trainee's device keeps to log cases without a network, apart from the forms themselves. Holds no name of a person.
 *
 * @param scrubline always "case-log"
 * @param programmes the programmes this person trains in; empty for somebody who trains in none
 */
record CaseLogPackage(String scrubline, List<Log> programmes) {

    /**
     * One programme.
     *
     * @param shape hash of everything the form shows, so that it is fetched again only when that changed
     * @param zone zone of the programme
     * @param zones zone of each site's clock by the site's id
     * @param procedures title by code
     * @param rubrics id of the version whose steps are shown, by procedure code
     * @param words message patterns by key, for what the device says by itself
     */
    record Log(
            UUID programme,
            String name,
            String shape,
            String zone,
            Map<String, String> zones,
            Map<String, String> procedures,
            Map<String, String> rubrics,
            Map<String, String> words) {}
}
