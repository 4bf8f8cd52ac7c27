package org.scrubline.people;

import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.annotation.Profile;
import org.springframework.context.event.EventListener;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;

/** Prints the set-up token on the console of an empty server. */
@Component
@Profile("!demo")
class FirstStartNotice {

    private final FirstStart firstStart;
    private final Environment environment;

    FirstStartNotice(FirstStart firstStart, Environment environment) {
        this.firstStart = firstStart;
        this.environment = environment;
    }

    @EventListener
    void ready(ApplicationReadyEvent event) {
        if (firstStart.waiting()) {
            System.out.printf(
                    "%n  This server is empty. Open http://localhost:%s/setup and enter this token once:%n%n      %s%n%n",
                    environment.getProperty("local.server.port", "8080"), firstStart.newToken());
        }
    }
}
