#pragma once

#include <condition_variable>
#include <cstddef>
#include <exception>
#include <map>
#include <mutex>
#include <optional>
#include <queue>
#include <system_error>
#include <thread>
#include <utility>
#include <vector>

namespace fluewright {

struct PipelineSize {
    unsigned workers{1};
    std::size_t most_in_flight{8}; ///< items read and not yet written: what bounds the memory
};

/// Reads items one after another, works on several at once, and writes the results in the order of
/// the items. Reading and writing overlap the work.
///
///   read()         std::optional<Item>; nothing ends the stream; called from one thread
///   work(item)     Worked; called from the worker threads at once, must not share mutable state
///   write(outcome) bool; false stops the pipeline; called from the calling thread only
///
/// The outcomes, and their order, do not depend on the number of workers. Where the system gives
/// fewer threads than asked for, fewer work; what one of the three throws ends the pipeline and is
/// thrown to the caller. Returns how many worked.
template <class Item, class Read, class Work, class Write>
unsigned run_ordered(const PipelineSize& size, Read read, Work work, Write write) {
    using Worked = decltype(work(std::declval<Item>()));
    const auto one_after_another = [&] {
        while (std::optional<Item> item = read()) {
            if (!write(work(std::move(*item)))) {
                break;
            }
        }
        return 1U;
    };
    if (size.workers <= 1) {
        return one_after_another();
    }

    std::mutex mutex;
    std::condition_variable changed;
    std::queue<std::pair<std::size_t, Item>> waiting;
    std::map<std::size_t, Worked> done;
    std::size_t read_count = 0;
    std::size_t written_count = 0;
    bool source_ended = false;
    bool stopped = false;
    std::exception_ptr thrown;

    const auto stop = [&](std::exception_ptr error) {
        const std::lock_guard lock(mutex);
        stopped = true;
        thrown = thrown ? thrown : std::move(error);
        changed.notify_all();
    };
    const auto guarded = [&](const auto& job) {
        try {
            job();
        } catch (...) {
            stop(std::current_exception());
        }
    };
    const auto reader = [&] {
        for (;;) {
            {
                std::unique_lock lock(mutex);
                changed.wait(lock, [&] {
                    return stopped || read_count - written_count < size.most_in_flight;
                });
                if (stopped) {
                    break;
                }
            }
            std::optional<Item> item = read();
            const std::lock_guard lock(mutex);
            if (!item) {
                break;
            }
            waiting.emplace(read_count++, std::move(*item));
            changed.notify_all();
        }
        const std::lock_guard lock(mutex);
        source_ended = true;
        changed.notify_all();
    };
    const auto worker = [&] {
        for (;;) {
            std::unique_lock lock(mutex);
            changed.wait(lock, [&] { return stopped || source_ended || !waiting.empty(); });
            if (stopped || waiting.empty()) {
                return;
            }
            std::pair<std::size_t, Item> next = std::move(waiting.front());
            waiting.pop();
            lock.unlock();
            Worked outcome = work(std::move(next.second));
            lock.lock();
            done.emplace(next.first, std::move(outcome));
            changed.notify_all();
        }
    };

    const auto writer = [&] {
        for (;;) {
            std::unique_lock lock(mutex);
            changed.wait(lock, [&] {
                return stopped || done.count(written_count) != 0
                       || (source_ended && written_count == read_count);
            });
            if (stopped || done.count(written_count) == 0) {
                return;
            }
            auto node = done.extract(written_count);
            lock.unlock();
            const bool go_on = write(std::move(node.mapped()));
            lock.lock();
            ++written_count;
            stopped = !go_on;
            changed.notify_all();
        }
    };

    std::vector<std::thread> threads;
    threads.reserve(size.workers + 1);
    bool reads = true;
    try {
        for (unsigned i = 0; i < size.workers; ++i) {
            threads.emplace_back(guarded, worker);
        }
    } catch (const std::system_error&) {
        reads = !threads.empty();
    }
    const auto workers = static_cast<unsigned>(threads.size());
    try {
        if (reads) {
            threads.emplace_back(guarded, reader);
        }
    } catch (const std::system_error&) {
        reads = false;
    }
    if (reads) {
        guarded(writer);
    }
    stop(nullptr);
    for (std::thread& thread : threads) {
        thread.join();
    }
    if (thrown) {
        std::rethrow_exception(thrown);
    }
    return reads ? workers : one_after_another();
}

} // namespace fluewright
