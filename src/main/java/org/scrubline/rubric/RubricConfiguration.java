package org.scrubline.rubric;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Makes the shipped library available; a fault in its files stops the start. */
@Configuration(proxyBeanMethods = false)
class RubricConfiguration {

    @Bean
    RubricLibrary rubricLibrary() {
        return RubricLibrary.shipped();
    }
}
