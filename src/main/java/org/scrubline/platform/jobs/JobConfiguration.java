package org.scrubline.platform.jobs;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Collects the rooms' jobs; there may be none. */
@Configuration(proxyBeanMethods = false)
class JobConfiguration {

    @Bean
    JobTasks jobTasks(ObjectProvider<RecurringJob> recurring, ObjectProvider<QueuedJob> queued, JobRunner runner) {
        return new JobTasks(recurring.stream().toList(), queued.stream().toList(), runner);
    }
}
