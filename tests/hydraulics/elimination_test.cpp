#include <loopwright/hydraulics/elimination.h>

#include <cmath>
#include <random>
#include <set>

#include <gtest/gtest.h>

namespace loopwright::hydraulics {
namespace {

struct Matrix {
    std::vector<MatrixPlace> places;
    std::vector<double> figures;
};

/// Sparse, with a diagonal that may be nothing, so that pivots have to be looked for.
Matrix some_matrix(std::size_t size, std::mt19937& lot) {
    std::uniform_int_distribution<std::uint32_t> any(0, static_cast<std::uint32_t>(size - 1));
    std::uniform_real_distribution<double> figure(-1.0, 1.0);
    std::set<MatrixPlace> places;
    // A permutation keeps it from being singular by its pattern.
    std::vector<std::uint32_t> columns(size);
    for (std::uint32_t i = 0; i < size; ++i) columns[i] = i;
    std::shuffle(columns.begin(), columns.end(), lot);
    for (std::uint32_t i = 0; i < size; ++i) places.insert({i, columns[i]});
    for (std::size_t i = 0; i < 3 * size; ++i) places.insert({any(lot), any(lot)});
    Matrix made{{places.begin(), places.end()}, {}};
    for (const MatrixPlace& place : made.places)
        made.figures.push_back(figure(lot) + (columns[place.row] == place.column ? 3.0 : 0.0));
    return made;
}

std::vector<double> times(const Matrix& matrix, const std::vector<double>& x) {
    std::vector<double> y(x.size(), 0.0);
    for (std::size_t i = 0; i < matrix.places.size(); ++i)
        y[matrix.places[i].row] += matrix.figures[i] * x[matrix.places[i].column];
    return y;
}

TEST(Elimination, GivesBackWhatTheMatrixWasMultipliedWith) {
    std::mt19937 lot(1);
    std::uniform_real_distribution<double> figure(-1.0, 1.0);
    for (const std::size_t size : {1U, 2U, 5U, 40U, 300U}) {
        Matrix matrix = some_matrix(size, lot);
        Elimination elimination(size, matrix.places);
        // Planned once, then replayed with other figures.
        for (int round = 0; round < 5; ++round) {
            std::vector<double> x(size);
            for (double& one : x) one = figure(lot);
            std::vector<double> y = times(matrix, x);
            ASSERT_TRUE(elimination.factor(matrix.figures));
            elimination.solve(y);
            for (std::size_t i = 0; i < size; ++i) EXPECT_NEAR(y[i], x[i], 1e-9) << size;
            for (double& one : matrix.figures) one *= 1.0 + 0.1 * figure(lot);
        }
    }
}

TEST(Elimination, PlansAnewWherePivotsHaveFadedAway) {
    Elimination elimination(2, {{0, 0}, {0, 1}, {1, 0}, {1, 1}});
    const std::vector<double> first{5.0, 1.0, 1.0, 4.0};
    ASSERT_TRUE(elimination.factor(first));
    const std::vector<double> faded{0.0, 2.0, 4.0, 0.0};
    ASSERT_TRUE(elimination.factor(faded));
    std::vector<double> right{6.0, 8.0};
    elimination.solve(right);
    EXPECT_DOUBLE_EQ(right[0], 2.0);
    EXPECT_DOUBLE_EQ(right[1], 3.0);
}

TEST(Elimination, SaysThatAMatrixIsSingular) {
    Elimination elimination(2, {{0, 0}, {0, 1}, {1, 0}, {1, 1}});
    EXPECT_FALSE(elimination.factor(std::vector<double>{1.0, 2.0, 2.0, 4.0}));
    EXPECT_TRUE(elimination.factor(std::vector<double>{1.0, 2.0, 2.0, 5.0}));
}

}  // namespace
}  // namespace loopwright::hydraulics
