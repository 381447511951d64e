#include <loopwright/hydraulics/sweep.h>

#include <algorithm>
#include <atomic>
#include <cmath>
#include <condition_variable>
#include <map>
#include <mutex>
#include <thread>

#include <loopwright/hydraulics/sweep_worker.h>

namespace loopwright::hydraulics {

namespace {

/// Rows that are worked out one from the other, by one worker, whoever it is: whole lines along the
/// last axis, or a piece of one that is long.
class Pieces {
  public:
    Pieces(std::size_t rows, std::size_t line)
        : rows_(rows),
          line_(line),
          pieces_a_line_((line + most_rows - 1) / most_rows),
          lines_a_piece_(std::max<std::size_t>(1, most_rows / line)) {}

    std::size_t count() const {
        const std::size_t lines = rows_ / line_;
        return pieces_a_line_ > 1 ? lines * pieces_a_line_
                                  : (lines + lines_a_piece_ - 1) / lines_a_piece_;
    }
    std::size_t begin(std::size_t piece) const {
        return pieces_a_line_ > 1
                   ? piece / pieces_a_line_ * line_ + piece % pieces_a_line_ * most_rows
                   : piece * lines_a_piece_ * line_;
    }
    std::size_t end(std::size_t piece) const {
        return piece + 1 < count() ? begin(piece + 1) : rows_;
    }
    /// The row at a place on the way through a piece: there along one line, back along the next, so
    /// that each lies beside the last one.
    std::size_t on_the_way(std::size_t piece, std::size_t place) const {
        const std::size_t row = begin(piece) + place;
        if (pieces_a_line_ > 1 || place / line_ % 2 == 0) return row;
        return row - place % line_ + line_ - 1 - place % line_;
    }

  private:
    static constexpr std::size_t most_rows = 64;
    std::size_t rows_;
    std::size_t line_;
    std::size_t pieces_a_line_;
    std::size_t lines_a_piece_;
};

/// Hands on in order what comes in any order.
class Queue {
  public:
    Queue(const Sweep::Take& take, std::size_t most_held) : take_(take), most_held_(most_held) {}

    /// Until there is room for that piece; always for the next one to be taken.
    void wait_for_room(std::size_t piece) {
        std::unique_lock lock(mutex_);
        room_.wait(lock, [&] { return piece < taken_ + most_held_; });
    }
    void put(std::size_t piece, SweepRows rows, std::string told) {
        const std::scoped_lock lock(mutex_);
        held_.emplace(piece, std::pair(std::move(rows), std::move(told)));
        for (auto first = held_.begin(); first != held_.end() && first->first == taken_;
             first = held_.erase(first)) {
            take_(first->second.first, first->second.second);
            ++taken_;
        }
        room_.notify_all();
    }

  private:
    const Sweep::Take& take_;
    std::size_t most_held_;
    std::mutex mutex_;
    std::condition_variable room_;
    std::size_t taken_ = 0;
    std::map<std::size_t, std::pair<SweepRows, std::string>> held_;
};

}  // namespace

std::optional<double> SweepRows::figure(std::size_t row, std::size_t column) const {
    const double found = figures[row * columns + column];
    return std::isnan(found) ? std::nullopt : std::optional(found);
}

void SweepRows::append(const SweepRows& rows) {
    solved.insert(solved.end(), rows.solved.begin(), rows.solved.end());
    figures.insert(figures.end(), rows.figures.begin(), rows.figures.end());
}

Sweep::Sweep(const Circuit& circuit, std::string_view point, std::vector<SweepAxis> axes)
    : circuit_(circuit), axes_(std::move(axes)) {
    for (Index i = 0; i < circuit.points.size(); ++i)
        if (circuit.points[i].id == point) point_ = i;
    columns_ = SweepWorker(circuit_, point_, axes_).columns();
}

std::size_t Sweep::size() const {
    std::size_t rows = 1;
    for (const SweepAxis& axis : axes_) rows *= static_cast<std::size_t>(axis.count);
    return rows;
}

double Sweep::axis(std::size_t row, std::size_t axis) const {
    for (std::size_t a = axes_.size(); --a > axis;) row /= static_cast<std::size_t>(axes_[a].count);
    const SweepAxis& one = axes_[axis];
    return one.at(static_cast<int>(row % static_cast<std::size_t>(one.count)));
}

void Sweep::run(const Tell& tell, const Take& take) const {
    const std::size_t line = axes_.empty() ? 1 : static_cast<std::size_t>(axes_.back().count);
    const Pieces pieces(size(), line);
    const std::size_t cores = std::max(1U, std::thread::hardware_concurrency());
    Queue queue(take, 8 * cores);
    std::atomic<std::size_t> next = 0;
    const auto work = [&] {
        SweepWorker worker(circuit_, point_, axes_);
        std::vector<double> values(axes_.size());
        for (std::size_t piece = next++; piece < pieces.count(); piece = next++) {
            queue.wait_for_room(piece);
            worker.begin_anew();
            SweepRows rows{.first = pieces.begin(piece), .columns = columns_.size()};
            const std::size_t count = pieces.end(piece) - rows.first;
            rows.solved.resize(count);
            rows.figures.resize(count * rows.columns);
            for (std::size_t place = 0; place < count; ++place) {
                const std::size_t row = pieces.on_the_way(piece, place);
                for (std::size_t a = 0; a < axes_.size(); ++a) values[a] = axis(row, a);
                const std::size_t here = row - rows.first;
                rows.solved[here] = worker.work(
                    values, std::span(rows.figures).subspan(here * rows.columns, rows.columns));
            }
            std::string told = tell(rows);
            queue.put(piece, std::move(rows), std::move(told));
        }
    };
    std::vector<std::jthread> others;
    for (std::size_t i = 1; i < std::min(cores, pieces.count()); ++i) others.emplace_back(work);
    work();
}

std::vector<DutyRow> duty_rows(const Circuit& circuit, const Sweep& sweep) {
    std::vector<DutyRow> found;
    for (Index i = 0; i < circuit.points.size(); ++i) {
        DutyRow& row = found.emplace_back();
        row.id = circuit.points[i].id;
        const PointFigures figures(circuit, i);
        for (const SweepAxis& axis : sweep.axes())
            row.axes.push_back(
                axis.component == none
                    ? figures.figure(axis.spec->name)
                    : circuit.figure(circuit.components[axis.component], axis.spec->name));
        row.rows.columns = sweep.columns().size();
        row.rows.solved.resize(1);
        row.rows.figures.resize(row.rows.columns);
        SweepWorker worker(circuit, i, {});
        row.rows.solved[0] = worker.work({}, row.rows.figures);
    }
    return found;
}

}  // namespace loopwright::hydraulics
