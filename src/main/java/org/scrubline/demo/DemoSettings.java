package org.scrubline.demo;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.scrubline.demo.plan.DemoPlan;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * How much of the demo programme is written, and when it was.
 *
 * @param scale 1 writes all 900 cases, .1 a tenth of them; at most 10
 * @param seed another seed, another history of the same people
 * @param begin first day of the 24 months; without one they end today
 */
@ConfigurationProperties("scrubline.demo")
record DemoSettings(
        @DefaultValue("1") double scale,
        @DefaultValue("" + DemoPlan.USUAL_SEED) long seed,
        @Nullable LocalDate begin) {}
