package org.scrubline.platform.web;

import java.util.List;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * What this server is called.
 *
 * @param hosts host names it answers to; empty for any
 */
@ConfigurationProperties("scrubline.web")
record HostSettings(@DefaultValue List<String> hosts) {

    HostSettings {
        hosts = List.copyOf(hosts);
    }
}
