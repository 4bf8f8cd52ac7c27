package org.scrubline.platform.web;

import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * Work without a network.
 *
 * @param enabled false withdraws it from every device at its next contact; what lies there stays
 * @param oldestShell the oldest number of {@link TableController#SHELL} still allowed
 */
@ConfigurationProperties("scrubline.at-the-table")
record TableSettings(
        @DefaultValue("true") boolean enabled,
        @DefaultValue("1") int oldestShell) {}
