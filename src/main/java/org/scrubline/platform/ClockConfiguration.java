package org.scrubline.platform;

import java.time.Clock;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

@Configuration(proxyBeanMethods = false)
class ClockConfiguration {

    @Bean
    ScrublineClock clock() {
        return new ScrublineClock(Clock.systemUTC());
    }
}
